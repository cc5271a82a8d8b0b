import { z } from 'zod';
import type { AirSaid } from '../../../shared/messages/cure.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { typedAirWords as words } from '../../../shared/words/air.ts';
import { readKept } from '../../parts/keep.ts';
import { airBounds, percentBounds, rangeError, temperatureError } from '../fields/checks.ts';
import { inUnit, isTyped, readFigure, readTemperature } from '../fields/number.ts';

/** The air as it is typed, in the unit in which it was. */
const draftSchema = z.strictObject({
  unit: z.enum(['F', 'C']),
  temperature: z.string(),
  humidity: z.string(),
});
export type Draft = z.infer<typeof draftSchema>;

export const emptyDraft = (unit: TemperatureUnit): Draft => ({ unit, temperature: '', humidity: '' });

/** What the tab kept of it; an empty one where that is nothing or can't be read. */
export const readDraft = (text: string | null, unit: TemperatureUnit): Draft =>
  readKept(text, draftSchema) ?? emptyDraft(unit);

/** The same in the unit that the page shows now. */
export const inUnitNow = (draft: Draft, unit: TemperatureUnit): Draft =>
  draft.unit === unit
    ? draft
    : { ...draft, unit, temperature: inUnit(readTemperature(draft.temperature, draft.unit), unit).text };

export interface Checked {
  /** Null while anything is wrong. */
  readonly said: Omit<AirSaid, 'commandId'> | null;
  /** What is wrong in either field; empty where nothing is. */
  readonly temperature: string;
  readonly humidity: string;
}

export function checkDraft({ unit, temperature, humidity }: Draft): Checked {
  const c = readTemperature(temperature, unit);
  const rh = readFigure(humidity, '%');
  const wrong = {
    temperature: temperatureError(c, unit, airBounds),
    humidity: isTyped(rh) ? rangeError(rh, percentBounds, words.percent) : '',
  };
  const isRight = wrong.temperature === '' && wrong.humidity === '' && c.value !== null;
  return { ...wrong, said: isRight ? { airC: c.value, rhPct: rh.value } : null };
}
