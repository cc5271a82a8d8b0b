import { describe, expect, test } from 'vitest';
import { gaussian } from '../../../../daemon/probe/simulated/random.ts';
import type { ChartPoint } from '../../../../shared/iron/dial/chart.ts';
import { driftOf } from '../../../../shared/iron/dial/drift.ts';
import { chartOf, point } from './charts.ts';

const chart = chartOf([1, 120], [3, 140], [5, 160]);

/** Stretches at a mark, one a day, off the chart by so many K. */
const days = (offsK: readonly number[], mark = 3, meanC = 140): ChartPoint[] =>
  offsK.map((offK, i) => ({
    ...point(mark, meanC + offK),
    at: `2026-05-${String(i + 1).padStart(2, '0')}T09:00:00Z`,
  }));

describe('drift', () => {
  test('none without history, on the chart, or outside its marks', () => {
    expect(driftOf([], chart, 0.25)).toBeNull();
    expect(driftOf(days([0.5, -1, 0.7, -0.4, 1]), chart, 0.25)).toBeNull();
    expect(driftOf(days([40, 40, 40], 9), chart, 0.25)).toBeNull();
  });

  test('how far and since when, hotter and colder', () => {
    const offsK = [0.5, -1, 0.3, 6, 6.5, 5.5];
    const drift = driftOf(days(offsK), chart, 0.25);
    expect(drift).toMatchObject({
      sinceAt: '2026-05-04T09:00:00Z',
      stretches: 3,
      sigmaK: 1.5,
      sigmaFrom: 'floor',
    });
    expect(drift?.byK).toBeCloseTo(6, 9);
    const colder = driftOf(days(offsK.map((k) => -k)), chart, 0.25);
    expect(colder?.byK).toBeCloseTo(-6, 9);
    expect(colder?.sinceAt).toBe('2026-05-04T09:00:00Z');
  });

  test('one stretch that is off by a little is none; a leap is', () => {
    expect(driftOf(days([0, 7]), chart, 0.25)).toBeNull();
    expect(driftOf(days([0, 10]), chart, 0.25)?.byK).toBeCloseTo(10, 9);
  });

  test('different marks, and between them, count together', () => {
    const history = [...days([5], 1, 120), ...days([5], 2, 130), ...days([5], 5, 160)];
    expect(driftOf(history, chart, 0.25)?.byK).toBeCloseTo(5, 9);
  });

  test('over once two stretches in a row are on the chart again', () => {
    expect(driftOf(days([8, 8, 8, 0.2]), chart, 0.25)).not.toBeNull();
    expect(driftOf(days([8, 8, 8, 0.2, 0.1]), chart, 0.25)).toBeNull();
  });

  test('a coarse probe, or a chart that scatters, makes it wait longer', () => {
    expect(driftOf(days([5, 5]), chart, 0.25)).not.toBeNull();
    expect(driftOf(days([5, 5]), chart, 4)).toBeNull();
    const scattered = { ...chart, points: chart.points.map((p) => ({ ...p, meanSpreadK: 4 })) };
    expect(driftOf(days([5, 5]), scattered, 0.25)).toBeNull();
    expect(driftOf(days([20, 20, 20]), scattered, 0.25)).toMatchObject({ sigmaK: 4, sigmaFrom: 'chart' });
  });

  test('an iron that only scatters by its standard deviation is accused seldom', () => {
    let seed = 11;
    let accused = 0;
    for (let run = 0; run < 200; run++) {
      const offsK = Array.from({ length: 28 }, () => {
        const drawn = gaussian(seed);
        seed = drawn.seed;
        return 1.5 * drawn.value;
      });
      if (driftOf(days(offsK), chart, 0.25) !== null) accused++;
    }
    // 28 of some 465 stretches on average: 6 %, fewer as it ends by itself.
    expect(accused).toBeLessThan(20);
  });
});
