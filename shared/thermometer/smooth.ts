/**
 * A temperature freed of single wild values and of noise: the middle one of three readings, then a first-order filter.
 * It trails the plate by about a second and one reading.
 */
export interface Smooth {
  readonly tMs: number;
  readonly levelC: number;
  /** The last readings, at most three. */
  readonly recentC: readonly number[];
}

/** Time constant of the filter, s. */
const TRAIL_S = 1;

/** Takes one more reading in. */
export function smooth(before: Smooth | null, tMs: number, plateC: number): Smooth {
  if (before === null) return { tMs, levelC: plateC, recentC: [plateC] };
  const recentC = [...before.recentC, plateC].slice(-3);
  const share = 1 - Math.exp(-(tMs - before.tMs) / (1000 * TRAIL_S));
  return { tMs, levelC: before.levelC + share * (middleOf(recentC) - before.levelC), recentC };
}

/** The middle of three values; of fewer, the last. */
function middleOf(values: readonly number[]): number {
  const [a, b, c] = values;
  if (a === undefined || b === undefined || c === undefined) return values.at(-1) ?? Number.NaN;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
