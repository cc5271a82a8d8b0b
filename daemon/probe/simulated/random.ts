/**
 * Repeatable randomness: the seed is plain state that is handed in and out, so that a simulated iron of one seed says
 * the same lines on every machine.
 */

/** A 32-bit unsigned integer: the whole state of the generator. */
export type Seed = number;

export interface Drawn {
  readonly value: number;
  readonly seed: Seed;
}

/**
 * A number in [0, 1), evenly spread: mulberry32, a 32-bit counter with a mixing step (T. Ettinger, public domain; from
 * memory). Good enough for noise on a thermocouple, for nothing that must stay secret.
 */
export function uniform(seed: Seed): Drawn {
  const next = (seed + 0x6d2b79f5) >>> 0;
  let mixed = Math.imul(next ^ (next >>> 15), next | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return { value: ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32, seed: next };
}

/** A number of the normal distribution with mean 0 and standard deviation 1 (Box-Muller, its cosine half). */
export function gaussian(seed: Seed): Drawn {
  const radius = uniform(seed);
  const angle = uniform(radius.seed);
  const value = Math.sqrt(-2 * Math.log(1 - radius.value)) * Math.cos(2 * Math.PI * angle.value);
  return { value, seed: angle.seed };
}
