/** The standard normal distribution. */

/** Nearer to the mean the series converges quickly, further out the continued fraction does. */
const SERIES_TO = 3;
const SMALLEST = 1e-17;

/** The probability of a value from `from` to `to`, in units of the standard deviation; small ones keep their digits. */
export function normalBetween(from: number, to: number): number {
  // Beyond the mean the far tails are the small ones, and the difference of two small numbers is exact.
  return from > 0 ? normalBelow(-from) - normalBelow(-to) : normalBelow(to) - normalBelow(from);
}

/** The probability of a value below `z`. */
export function normalBelow(z: number): number {
  const x = Math.abs(z);
  if (x < SERIES_TO) return 0.5 + Math.sign(z) * fromMean(x);
  return z < 0 ? beyond(x) : 1 - beyond(x);
}

/** From the mean to x: Abramowitz and Stegun 26.2.11 (from memory). */
function fromMean(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; term > SMALLEST; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return sum * density(x);
}

/** Beyond x: Abramowitz and Stegun 26.2.14 (from memory), from its far end. */
function beyond(x: number): number {
  if (x === Number.POSITIVE_INFINITY) return 0;
  let fraction = x;
  // The further out, the fewer terms give all digits.
  for (let n = Math.ceil(10 + 450 / (x * x)); n > 0; n -= 1) fraction = x + n / fraction;
  return density(x) / fraction;
}

const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
