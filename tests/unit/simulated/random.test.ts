import { describe, expect, it } from 'vitest';
import { type Drawn, gaussian, type Seed, uniform } from '../../../daemon/probe/simulated/random.ts';

function draws(draw: (seed: Seed) => Drawn, count: number, first: Seed): readonly number[] {
  let seed = first;
  return Array.from({ length: count }, () => {
    const drawn = draw(seed);
    seed = drawn.seed;
    return drawn.value;
  });
}

const moment = (values: readonly number[], order: number): number =>
  values.reduce((sum, x) => sum + x ** order, 0) / values.length;

describe('repeatable randomness', () => {
  it('gives the same numbers for the same seed and others for its neighbour', () => {
    expect(draws(uniform, 5, 7)).toEqual(draws(uniform, 5, 7));
    expect(draws(uniform, 5, 7)).not.toEqual(draws(uniform, 5, 8));
  });

  it('spreads evenly over [0, 1): each tenth gets a tenth of 100,000', () => {
    const values = draws(uniform, 100_000, 3);
    const tenths = Array.from(
      { length: 10 },
      (_, i) => values.filter((x) => Math.floor(x * 10) === i).length,
    );
    expect(tenths.reduce((a, b) => a + b)).toBe(100_000);
    // Five standard deviations of a binomial count: sqrt(100000 * 0.1 * 0.9) = 95.
    for (const count of tenths) expect(Math.abs(count - 10_000)).toBeLessThan(475);
  });

  it('gives a standard normal: mean 0, variance 1, no skew, kurtosis 3, 68.3 % within one deviation', () => {
    const values = draws(gaussian, 100_000, 11);
    // Five standard errors: 1/sqrt(n), sqrt(2/n), sqrt(6/n) (third moment: sqrt(15/n)), sqrt(96/n) (textbook).
    const root = Math.sqrt(values.length);
    expect(Math.abs(moment(values, 1))).toBeLessThan(5 / root);
    expect(Math.abs(moment(values, 2) - 1)).toBeLessThan((5 * Math.SQRT2) / root);
    expect(Math.abs(moment(values, 3))).toBeLessThan((5 * Math.sqrt(15)) / root);
    expect(Math.abs(moment(values, 4) - 3)).toBeLessThan((5 * Math.sqrt(96)) / root);
    const within = values.filter((x) => Math.abs(x) < 1).length / values.length;
    expect(within).toBeCloseTo(0.6827, 2);
  });
});
