import type { z } from 'zod';
import { AIR_HIGHEST_C, AIR_LOWEST_C } from '../../../shared/cure/air.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { issueSentence } from '../../../shared/words/issue.ts';
import { fieldWords } from '../../../shared/words/setup.ts';
import type { Checked } from '../versioned/kind.ts';
import { type Typed, temperatureTyped } from './number.ts';

/** What is wrong with a field, as a sentence that says what would be right; empty where nothing is. */

export const tooLong = (text: string, most: number): string =>
  text.trim().length > most ? fieldWords.tooLong(most, text.trim().length) : '';

export const nameError = (text: string, most: number): string =>
  text.trim() === '' ? fieldWords.empty : tooLong(text, most);

/** One of the two fields that say where something is written: neither says anything alone. */
export function sourceError(
  text: string,
  other: string,
  { most, missing }: { readonly most: number; readonly missing: string },
): string {
  if (text.trim() === '' && other.trim() !== '') return missing;
  return tooLong(text, most);
}

export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** Of a temperature, degC, with what one could write. */
export interface TemperatureBounds extends Bounds {
  readonly example?: string;
}

export const rangeError = (
  { value }: Typed,
  { least, most }: Bounds,
  said: (text: string) => string,
): string =>
  value === null || value < least || value > most ? fieldWords.fromTo(said(`${least}`), said(`${most}`)) : '';

/** What air can be, degC, and a relative humidity, percent; as the schemas have it. */
export const airBounds: TemperatureBounds = {
  least: AIR_LOWEST_C,
  most: AIR_HIGHEST_C,
  example: '70 or 70,5',
};
export const percentBounds: Bounds = { least: 0, most: 100 };

export function temperatureError(
  typed: Typed,
  unit: TemperatureUnit,
  { least, most, example }: TemperatureBounds,
): string {
  if (typed.value === null) return fieldWords.notANumber(`°${unit}`, example);
  if (typed.value >= least && typed.value <= most) return '';
  return fieldWords.fromTo(
    temperatureTyped(least, unit).text,
    `${temperatureTyped(most, unit).text} °${unit}`,
  );
}

/** Whether one is over the other, as far as both can be read; `orAlike`: or the same. */
export const isOver = (one: Typed, other: Typed, orAlike = false): boolean =>
  one.value !== null &&
  other.value !== null &&
  (one.value > other.value || (orAlike && one.value === other.value));

/** A temperature that was typed, with its sign. */
export const shown = (typed: Typed, unit: TemperatureUnit): string =>
  `${typed.value === null ? typed.text : temperatureTyped(typed.value, unit).text} °${unit}`;

/** The schema has the last word: what it refuses beyond the checks of the fields stands beside the whole form. */
export function parsedDraft<V>(schema: z.ZodType<V>, draft: unknown, whole: string): Checked<V> {
  const read = schema.safeParse(draft, { reportInput: true });
  if (read.success) return { values: read.data, errors: new Map() };
  const sentences = read.error.issues.map((issue) => issueSentence(issue, whole));
  return { values: null, errors: new Map([['whole', sentences.join(' ')]]) };
}
