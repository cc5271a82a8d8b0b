/** Distributions over the natural logarithm of a factor, on a grid around 0. */

export interface Grid {
  readonly stepLn: number;
  /** Points to either side of 0. */
  readonly steps: number;
}

/** The probabilities of being below each point of its grid. */
export interface Distribution {
  readonly grid: Grid;
  readonly below: readonly number[];
}

export const gridLn = ({ stepLn, steps }: Grid): number[] =>
  Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * stepLn);

/** The normal density around 0, but for a constant factor. */
export const bell = (ln: number, sd: number): number => Math.exp(-((ln / sd) ** 2) / 2) / sd;

/** Of a sum of two, on the grid that both give together. */
export function convolved(a: readonly number[], b: readonly number[]): readonly number[] {
  const sums = Array.from({ length: a.length + b.length - 1 }, () => 0);
  for (const [i, x] of a.entries())
    for (const [k, y] of b.entries()) sums[i + k] = (sums[i + k] ?? 0) + x * y;
  return sums;
}

/**
 * From densities that needn't sum to 1. Between points the trapezoid rule, with the first term of what it is off by
 * (Euler and Maclaurin): smooth densities come out to some 1e-6.
 */
export function distributionOf(grid: Grid, densities: readonly number[]): Distribution {
  const at = (i: number): number => densities[i] ?? 0;
  const slope = (i: number): number => (at(i + 1) - at(i - 1)) / 2;
  let sum = 0;
  let most = 0;
  const sums = densities.map((density, i) => {
    if (i > 0) sum += (density + at(i - 1)) / 2;
    most = Math.max(most, sum - slope(i) / 12);
    return most;
  });
  return { grid, below: sums.map((part) => part / most) };
}

/** Where the probability of being below is `p`. */
export function quantileLn({ grid, below }: Distribution, p: number): number {
  const found = below.findIndex((part) => part >= p);
  const i = found < 0 ? below.length - 2 : Math.max(0, found - 1);
  let [low, high] = [0, 1];
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (low + high) / 2;
    if (between(below, i, middle) < p) low = middle;
    else high = middle;
  }
  return (i + high - grid.steps) * grid.stepLn;
}

export function probabilityBelow({ grid, below }: Distribution, ln: number): number {
  const at = ln / grid.stepLn + grid.steps;
  if (at <= 0) return 0;
  const i = Math.floor(at);
  return i >= below.length - 1 ? 1 : between(below, i, at - i);
}

/** A cubic between point `i` and the next, with the slopes that their neighbours give. */
function between(below: readonly number[], i: number, part: number): number {
  const at = (k: number): number => below[k] ?? (k < 0 ? 0 : 1);
  const [from, to] = [at(i), at(i + 1)];
  const [slopeFrom, slopeTo] = [(to - at(i - 1)) / 2, (at(i + 2) - from) / 2];
  const [quadratic, cubic] = [
    3 * (to - from) - 2 * slopeFrom - slopeTo,
    slopeFrom + slopeTo - 2 * (to - from),
  ];
  return from + part * (slopeFrom + part * (quadratic + part * cubic));
}

/** Of a step of the grid: as fine as a number is. */
const HALVINGS = 50;
