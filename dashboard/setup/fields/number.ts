import { z } from 'zod';
import { cToF, fToC, type TemperatureUnit } from '../../../shared/units/temperature.ts';

/** Numbers as people type them, and temperatures typed in the unit that the page shows. */

/** The number in a text, with a decimal comma or point; null for anything else, several of them included. */
export function readNumber(text: string): number | null {
  const trimmed = text.trim().replace(/^[−–]/, '-');
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(trimmed)) return null;
  return Number(trimmed.replace(',', '.'));
}

/** A number as briefly as it is still the same one; one with many decimals is rounded to one. */
export function writeNumber(value: number): string {
  for (const digits of [0, 1, 2]) {
    const text = value.toFixed(digits);
    if (Math.abs(Number(text) - value) < SAME) return Number(text) === 0 ? '0' : text;
  }
  return value.toFixed(1);
}

/** Closer than this a number counts as what is written of it: no temperature is typed so finely. */
const SAME = 1e-6;

/**
 * A temperature, or a difference of two, as it stands in a field: the text, and the exact value behind it, null where
 * the text is no number. What the user has not touched keeps its exact value, whatever it is rounded to.
 */
export interface Typed {
  readonly text: string;
  readonly value: number | null;
}

export const typedSchema = z.strictObject({ text: z.string(), value: z.number().nullable() });

export const emptyTyped: Typed = { text: '', value: null };

/** Whether anything stands there at all. */
export const isTyped = ({ text }: Typed): boolean => text.trim() !== '';

/** What makes two fields alike: the value behind a text; the text itself only where there is none. */
export const meaning = ({ text, value }: Typed): string =>
  value === null ? `text ${text.trim()}` : String(value);

/** A temperature in degC, to be shown in `unit`. */
export const temperatureTyped = (c: number, unit: TemperatureUnit): Typed => ({
  text: writeNumber(unit === 'F' ? cToF(c) : c),
  value: c,
});

/** What the user has typed in `unit`. Its own sign may stand behind it. */
export function readTemperature(text: string, unit: TemperatureUnit): Typed {
  const number = readNumber(withoutSign(text, unit));
  return { text, value: number === null ? null : unit === 'F' ? fToC(number) : number };
}

/** The hottest and the coldest that a plate may be typed as, degC. */
const MOST_C = 400;
const LEAST_C = 0;

/** A plate temperature that the user has typed in `unit`, degC; null where it is no number, or none that a plate has. */
export function readPlateC(text: string, unit: TemperatureUnit): number | null {
  const { value } = readTemperature(text, unit);
  return value === null || value < LEAST_C || value > MOST_C ? null : value;
}

/** A number without a unit that the page converts: seconds, percent. */
export const figureTyped = (value: number): Typed => ({ text: writeNumber(value), value });

/** What the user has typed; its own sign may stand behind it. */
export const readFigure = (text: string, sign: string): Typed => ({
  text,
  value: readNumber(text.trimEnd().endsWith(sign) ? text.trimEnd().slice(0, -sign.length) : text),
});

/** A difference in K, to be shown in `unit`. */
export const differenceTyped = (k: number, unit: TemperatureUnit): Typed => ({
  text: writeNumber(unit === 'F' ? (k * 9) / 5 : k),
  value: k,
});

export function readDifference(text: string, unit: TemperatureUnit): Typed {
  const number = readNumber(withoutSign(text, unit));
  return { text, value: number === null ? null : unit === 'F' ? (number * 5) / 9 : number };
}

const withoutSign = (text: string, unit: TemperatureUnit): string =>
  text.replace(new RegExp(`\\s*°?\\s*${unit}\\s*$`, 'i'), '');

/** The same temperature in another unit. A text that is no number stays as it was typed. */
export const inUnit = (typed: Typed, unit: TemperatureUnit): Typed =>
  typed.value === null ? typed : temperatureTyped(typed.value, unit);
