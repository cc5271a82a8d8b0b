import { describe, expect, it } from 'vitest';
import { gaussian } from '../../../daemon/probe/simulated/random.ts';
import { addToCusum, noCusum } from '../../../shared/iron/dial/control-chart.ts';
import { json } from '../data.ts';

/** A control chart against a published worked example. Sources and standing: data/4_statistics/SOURCES.md. */

describe('tabular CUSUM: Montgomery and Runger, tables 16-7 and 16-8, Example 16-6 (seen)', () => {
  const example = json('4_statistics/montgomery_cusum_example.json') as {
    readonly target: number;
    readonly K: number;
    readonly H: number;
    readonly data: readonly number[];
    readonly cumulative_sum: readonly number[];
    readonly upper_cusum: readonly number[];
    readonly lower_cusum: readonly number[];
    readonly signal: number | null;
  };

  it('gives all 20 rows: cumulative sum, upper and lower CUSUM, and no signal', () => {
    expect(example.data).toHaveLength(20);
    let cusum = noCusum;
    let cumulative = 0;
    let signal: number | null = null;
    for (const [i, x] of example.data.entries()) {
      cusum = addToCusum(cusum, x - example.target, example.K);
      cumulative += x - example.target;
      expect(cumulative).toBeCloseTo(example.cumulative_sum[i] ?? Number.NaN, 9);
      expect(cusum.above.sum).toBeCloseTo(example.upper_cusum[i] ?? Number.NaN, 9);
      expect(cusum.below.sum).toBeCloseTo(example.lower_cusum[i] ?? Number.NaN, 9);
      if (signal === null && Math.max(cusum.above.sum, cusum.below.sum) > example.H) signal = i;
    }
    expect(signal).toBe(example.signal);
  });

  it('counts since when a side has been above 0, by the printed columns', () => {
    let cusum = noCusum;
    let run = 0;
    for (const [i, x] of example.data.entries()) {
      cusum = addToCusum(cusum, x - example.target, example.K);
      run = (example.lower_cusum[i] ?? 0) > 0 ? run + 1 : 0;
      expect(cusum.below.run).toBe(run);
    }
  });
});

/** How many observations pass on average until a shift of so many standard deviations is found. */
function runLength(shift: number, runs: number): number {
  let seed = 17;
  let steps = 0;
  for (let run = 0; run < runs; run++) {
    for (let cusum = noCusum; Math.max(cusum.above.sum, cusum.below.sum) <= 5; steps++) {
      const drawn = gaussian(seed);
      seed = drawn.seed;
      cusum = addToCusum(cusum, shift + drawn.value, 0.5);
    }
  }
  return steps / runs;
}

/**
 * Average run lengths of a CUSUM with slack 0.5 and decision interval 5: Montgomery, Introduction to Statistical Quality
 * Control, from memory; here only as far as a simulation bears them out.
 */
it.each([
  { shift: 0, length: 465, runs: 600 },
  { shift: 1, length: 10.4, runs: 3000 },
  { shift: 2, length: 4.01, runs: 3000 },
  { shift: 3, length: 2.57, runs: 3000 },
])(
  'a shift of $shift standard deviations is found after $length observations on average',
  ({ shift, length, runs }) => {
    // The standard error of the simulated mean is at most 1 / sqrt(runs) of it.
    expect(Math.abs(runLength(shift, runs) / length - 1)).toBeLessThan(3.5 / Math.sqrt(runs) + 0.005);
  },
);
