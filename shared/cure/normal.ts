/** The standard normal distribution. */

/** Below this the series converges quickly, above it the continued fraction. */
const SERIES_TO = 3;
const SMALLEST = 1e-17;
const FRACTION_TERMS = 60;

/** The probability of a value below `z`, exact to some 1e-15 of the smaller tail. */
export function normalBelow(z: number): number {
  const x = Math.abs(z);
  if (x < SERIES_TO) return 0.5 + Math.sign(z) * fromMean(x);
  return z < 0 ? tail(x) : 1 - tail(x);
}

/** Probability from 0 to x: Abramowitz and Stegun 26.2.11. */
function fromMean(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; term > SMALLEST; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return sum * density(x);
}

/** Probability beyond x: Abramowitz and Stegun 26.2.14, from its far end. */
function tail(x: number): number {
  let fraction = x;
  for (let n = FRACTION_TERMS; n > 0; n -= 1) fraction = x + n / fraction;
  return density(x) / fraction;
}

const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
