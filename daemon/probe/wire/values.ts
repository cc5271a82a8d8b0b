import type { WireFault } from '../../../shared/thermometer/sample.ts';

/** Reads the values of a line's keys. Each gives null for what can't be one: the line is then refused whole. */

const decimal = /^[+-]?[0-9]+(\.[0-9]+)?$/;
/** What C's printf and boards' own print functions give for a number that there isn't. */
const noNumber = /^[+-]?(nan|inf|infinity|ovf)$/i;
const natural = /^[0-9]{1,10}$/;

export type Measured = number | 'not-a-number';

/** A measured value: a plain decimal number, or the text of one that isn't. */
export function measured(text: string): Measured | null {
  // Adding 0 makes -0 a 0, which JSON would otherwise change behind our back.
  if (decimal.test(text)) return Number(text) + 0;
  return noNumber.test(text) ? 'not-a-number' : null;
}

/** A measured value between two bounds. */
export function measuredWithin(text: string, low: number, high: number): Measured | null {
  const value = measured(text);
  return typeof value === 'number' && (value < low || value > high) ? null : value;
}

/** A whole number from 0 up to `max`. */
export function counted(text: string, max: number): number | null {
  const value = natural.test(text) ? Number(text) : null;
  return value !== null && value <= max ? value : null;
}

export function probeName(text: string): string | null {
  return /^[A-Za-z0-9_-]{1,16}$/.test(text) ? text : null;
}

export function button(text: string): 1 | 2 | null {
  if (text === '1') return 1;
  return text === '2' ? 2 : null;
}

const faultLetters: Readonly<Record<string, WireFault>> = {
  o: 'open',
  g: 'short-to-ground',
  v: 'short-to-supply',
  c: 'cold-junction',
};

/** One letter a fault, in any order; no letter is not "no fault" but a value cut off. */
export function faultsOf(text: string): readonly WireFault[] | null {
  const found = new Set<WireFault>();
  for (const letter of text) {
    const fault = faultLetters[letter];
    if (fault === undefined) return null;
    found.add(fault);
  }
  return found.size > 0 ? [...found] : null;
}
