import { describe, expect, it } from 'vitest';
import { gaussian } from '../../../daemon/probe/simulated/random.ts';
import { addToCusum, ewma, ewmaLimits, noCusum } from '../../../shared/iron/dial/control-chart.ts';
import { json } from '../data.ts';

/** Control charts against published worked examples. Sources and standing: data/4_statistics/SOURCES.md. */

describe('EWMA: NIST/SEMATECH e-Handbook 6.3.2.4 (seen)', () => {
  const example = json('4_statistics/nist_ewma_example.json') as {
    readonly lam: number;
    readonly ewma0: number;
    readonly s: number;
    readonly k: number;
    readonly data: readonly number[];
    readonly ewma_2dp_including_start: readonly number[];
    readonly ucl: number;
    readonly lcl: number;
    readonly out_of_control: readonly number[];
  };
  const averages = ewma(example.data, example.lam, example.ewma0);
  const limits = ewmaLimits(example.ewma0, example.s, { weight: example.lam, widths: example.k });

  it('rounds to all 21 printed values', () => {
    const all = [example.ewma0, ...averages];
    expect(example.ewma_2dp_including_start).toHaveLength(21);
    for (const [i, printed] of example.ewma_2dp_including_start.entries())
      expect(Math.abs((all[i] ?? Number.NaN) - printed)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  it('has the printed limits; the lower one was printed from a cut factor', () => {
    expect(limits.upper).toBeCloseTo(example.ucl, 4);
    expect(Math.abs(limits.lower - example.lcl)).toBeLessThan(0.0002);
  });

  it('is in control throughout', () => {
    const out = averages.flatMap((z, i) => (z > limits.upper || z < limits.lower ? [i] : []));
    expect(out).toEqual(example.out_of_control);
  });
});

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
