/** From values to places in a plot, both ways in percent. Pure. */

export interface Scale {
  readonly from: number;
  readonly to: number;
}

/** A scale that holds all values, with a little room to either side; null where there are none. */
export function scaleOf(values: readonly number[], roomShare: number): Scale | null {
  if (values.length === 0) return null;
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max((high - low) * roomShare, LEAST_ROOM);
  return { from: low - room, to: high + room };
}

/** So that a single value has a scale too. */
const LEAST_ROOM = 0.5;

/** Percent from the left. */
export const across = ({ from, to }: Scale, value: number): number => ((value - from) / (to - from)) * 100;

/** Percent from the top. */
export const down = (scale: Scale, value: number): number => 100 - across(scale, value);

/** Whole numbers, or halves where there are few, of a scale: no more than `most`. */
export function plainTicks({ from, to }: Scale, most: number): readonly number[] {
  const step = plainSteps.find((one) => (to - from) / one <= most) ?? (to - from) / most;
  const ticks: number[] = [];
  for (let value = Math.ceil(from / step) * step; value <= to; value += step)
    ticks.push(Number(value.toFixed(3)));
  return ticks;
}

const plainSteps = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;
