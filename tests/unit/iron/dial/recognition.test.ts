import { describe, expect, test } from 'vitest';
import { gaussian } from '../../../../daemon/probe/simulated/random.ts';
import { ramp, Sitter, waves } from './sitting-plate.ts';

/**
 * The recognition of cycles, and what is measured of them, on wave forms whose truth is known. Readings go through the
 * smoothing of 1 s that everything live goes through, so sharp corners come out a little rounded.
 */

/** Up from cold to the peak of a wave around 150 degC, 24 K wide, then `s` seconds of it. */
function sitThrough(s: number, wave: (s: number) => number, everyMs = 250): Sitter {
  const sitter = new Sitter().say({ mark: 3, place: 'on-rest' });
  return sitter
    .run(10, () => 20)
    .run(142, ramp(20, 1), everyMs)
    .run(s, wave, everyMs);
}

function noisy(wave: (s: number) => number, sigmaK: number, stepK: number, seed: number) {
  let state = seed;
  return (s: number): number => {
    const drawn = gaussian(state);
    state = drawn.seed;
    return Math.round((wave(s) + sigmaK * drawn.value) / stepK) * stepK;
  };
}

interface Bounds {
  readonly meanK: number;
  readonly peakK: number;
  readonly periodS: number;
  readonly duty: number;
}

function expectNear(sitter: Sitter, duty: number, bounds: Bounds, periodS = 80): void {
  const { figures } = sitter.last;
  expect(figures.cycles).toBeGreaterThanOrEqual(8);
  expect(Math.abs(figures.meanC - 150)).toBeLessThan(bounds.meanK);
  expect(Math.abs(figures.peakC - 162)).toBeLessThan(bounds.peakK);
  expect(Math.abs(figures.troughC - 138)).toBeLessThan(bounds.peakK);
  expect(Math.abs(figures.fluctuationK - 24)).toBeLessThan(2 * bounds.peakK);
  expect(Math.abs(figures.periodS - periodS)).toBeLessThan(bounds.periodS);
  expect(Math.abs(figures.duty - duty)).toBeLessThan(bounds.duty);
}

describe('clean wave forms, 24 K from trough to peak, 80 s', () => {
  test('sine', () => {
    const sitter = sitThrough(1000, waves.sine(150, 24, 80));
    expectNear(sitter, 0.5, { meanK: 0.05, peakK: 0.1, periodS: 0.3, duty: 0.02 });
  });

  test('sawtooth that rises for 30 % of the time', () => {
    const sitter = sitThrough(1000, waves.sawtooth(150, 24, 80));
    expectNear(sitter, 0.3, { meanK: 0.05, peakK: 1, periodS: 0.3, duty: 0.02 });
  });

  test('square: the mean is right, peak and trough too; where it turns within a flat can’t be told', () => {
    const sitter = sitThrough(1000, waves.square(150, 24, 80));
    const { figures } = sitter.last;
    expect(Math.abs(figures.meanC - 150)).toBeLessThan(0.1);
    expect(Math.abs(figures.peakC - 162)).toBeLessThan(0.1);
    expect(Math.abs(figures.troughC - 138)).toBeLessThan(0.1);
    expect(Math.abs(figures.periodS - 80)).toBeLessThan(0.5);
  });
});

describe('noisy and coarse', () => {
  test.each([1, 2, 3, 4, 5])('0.5 K of noise in steps of 0.25 K, seed %i', (seed) => {
    const sitter = sitThrough(1400, noisy(waves.sine(150, 24, 80), 0.5, 0.25, seed));
    expectNear(sitter, 0.5, { meanK: 0.3, peakK: 0.5, periodS: 1, duty: 0.06 });
  });

  test.each([1, 2, 3])('whole degrees twice a second with 0.3 K of noise, seed %i', (seed) => {
    const sitter = sitThrough(1400, noisy(waves.sawtooth(150, 24, 80), 0.3, 1, seed), 500);
    expectNear(sitter, 0.3, { meanK: 0.3, peakK: 1.3, periodS: 1, duty: 0.06 });
  });

  test.each([1, 2, 3])('a square with 0.5 K of noise: cycles end anywhere in a flat, seed %i', (seed) => {
    const sitter = sitThrough(1500, noisy(waves.square(150, 24, 80), 0.5, 0.25, seed));
    const { figures } = sitter.last;
    expect(figures.cycles).toBeGreaterThanOrEqual(8);
    expect(Math.abs(figures.meanC - 150)).toBeLessThan(1);
    expect(Math.abs(figures.peakC - 162)).toBeLessThan(0.8);
    expect(Math.abs(figures.periodS - 80)).toBeLessThan(5);
  });

  test('a narrow swing of 6 K', () => {
    const sitter = sitThrough(1400, noisy(waves.sine(150, 6, 80), 0.2, 0.25, 7));
    expect(sitter.last.figures.cycles).toBeGreaterThanOrEqual(8);
    expect(Math.abs(sitter.last.figures.fluctuationK - 6)).toBeLessThan(0.6);
    expect(Math.abs(sitter.last.figures.meanC - 150)).toBeLessThan(0.2);
  });
});

/** Sines whose lengths and heights are drawn anew each cycle; each begins and ends at a peak. */
function irregular(seed: number, count: number) {
  const cycles: { fromS: number; periodS: number; fromPeakC: number; toPeakC: number; troughC: number }[] =
    [];
  let state = seed;
  const draw = (mean: number, sigma: number): number => {
    const drawn = gaussian(state);
    state = drawn.seed;
    return mean + sigma * Math.max(-2, Math.min(2, drawn.value));
  };
  let fromS = 0;
  let fromPeakC = 162;
  for (let i = 0; i < count; i++) {
    const toPeakC = draw(162, 2.5);
    const cycle = { fromS, periodS: draw(80, 12), fromPeakC, toPeakC, troughC: draw(138, 2.5) };
    cycles.push(cycle);
    fromS += cycle.periodS;
    fromPeakC = toPeakC;
  }
  const plateC = (s: number): number => {
    const cycle = cycles.findLast((c) => c.fromS <= s) ?? cycles[0];
    if (cycle === undefined) throw new Error('no cycle');
    const part = Math.min(1, (s - cycle.fromS) / cycle.periodS);
    const peakC = part < 0.5 ? cycle.fromPeakC : cycle.toPeakC;
    return cycle.troughC + ((peakC - cycle.troughC) * (1 + Math.cos(2 * Math.PI * part))) / 2;
  };
  return { cycles, plateC, lengthS: fromS };
}

test.each([1, 2, 3, 4, 5])(
  'irregular cycles: none is lost, their mean and scatter come back, seed %i',
  (seed) => {
    const { cycles, plateC, lengthS } = irregular(seed, 16);
    const sitter = sitThrough(lengthS, plateC);
    const { figures } = sitter.last;
    // They go from trough to trough, and the first one is left out; told of after 3, 8 and 13.
    expect(figures.cycles).toBeGreaterThanOrEqual(8);
    const told = cycles.slice(1, 1 + figures.cycles);
    const meanPeakC = told.reduce((sum, c) => sum + c.toPeakC, 0) / told.length;
    expect(Math.abs(figures.peakC - meanPeakC)).toBeLessThan(0.2);
    expect(figures.peakSpreadK ?? 0).toBeGreaterThan(1);
    expect(Math.abs(figures.meanC - 150)).toBeLessThan(2);
  },
);

test('small swings after a first peak far above them are measured right, from the beginning', () => {
  const sitter = new Sitter().say({ mark: 1, place: 'on-rest' });
  sitter
    .run(10, () => 20)
    .run(160, ramp(20, 1))
    .run(100, ramp(180, -0.36))
    .run(600, waves.sine(144, 8, 80));
  const { figures } = sitter.last;
  expect(figures.cycles).toBeGreaterThanOrEqual(3);
  expect(Math.abs(figures.meanC - 144)).toBeLessThan(0.1);
  expect(Math.abs(figures.fluctuationK - 8)).toBeLessThan(0.2);
  expect(Math.abs(figures.periodS - 80)).toBeLessThan(1);
});
