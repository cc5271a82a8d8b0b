import { cToF, fToC, type TemperatureUnit } from '../../shared/units/temperature.ts';
import type { View } from './view.ts';

/** Where the lines of the scales stand. Pure. */

const S = 1000;
const MIN = 60 * S;
const H = 60 * MIN;
/** Steps of time that people count in, ms. */
const timeSteps = [
  100,
  200,
  500,
  S,
  2 * S,
  5 * S,
  10 * S,
  15 * S,
  30 * S,
  MIN,
  2 * MIN,
  5 * MIN,
  10 * MIN,
  15 * MIN,
  30 * MIN,
  H,
  2 * H,
  3 * H,
  6 * H,
  12 * H,
  24 * H,
] as const;

export interface TimeTicks {
  readonly stepMs: number;
  readonly at: readonly number[];
}

/**
 * Moments of a span on round times.
 * @param most no more of them than this
 * @param zeroMs where a round time stands on the scale, for example the scale's time of the clock's full hour
 */
export function timeTicks({ fromMs, toMs }: View, most: number, zeroMs: number): TimeTicks {
  const length = toMs - fromMs;
  const stepMs =
    timeSteps.find((step) => length / step <= most) ?? Math.ceil(length / most / (24 * H)) * 24 * H;
  const at: number[] = [];
  for (let tMs = zeroMs + Math.ceil((fromMs - zeroMs) / stepMs) * stepMs; tMs <= toMs; tMs += stepMs)
    at.push(tMs);
  return { stepMs, at };
}

const degreeSteps = [1, 2, 5, 10, 20, 25, 50, 100, 200] as const;

/** Temperatures of a range, degC, that are round numbers in the unit that is shown. */
export function temperatureTicks(
  range: { readonly lowC: number; readonly highC: number },
  unit: TemperatureUnit,
  most: number,
): readonly number[] {
  const shown = unit === 'F' ? cToF : (c: number): number => c;
  const [low, high] = [shown(range.lowC), shown(range.highC)];
  const step = degreeSteps.find((one) => (high - low) / one <= most) ?? 500;
  const at: number[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high; value += step)
    at.push(unit === 'F' ? fToC(value) : value);
  return at;
}
