import { type Seed, uniform } from './random.ts';

/** A stream of seeded choices. */
export interface Draw {
  readonly between: (low: number, high: number) => number;
  readonly chance: (share: number) => boolean;
  /** @throws RangeError where there is nothing to choose from. */
  readonly oneOf: <T>(values: readonly T[]) => T;
}

export function drawOf(seed: Seed): Draw {
  let state = seed >>> 0;
  const next = (): number => {
    const drawn = uniform(state);
    state = drawn.seed;
    return drawn.value;
  };
  return {
    between: (low, high) => low + (high - low) * next(),
    chance: (share) => next() < share,
    oneOf: (values) => {
      const value = values[Math.floor(next() * values.length)];
      if (value === undefined) throw new RangeError('nothing to choose from');
      return value;
    },
  };
}
