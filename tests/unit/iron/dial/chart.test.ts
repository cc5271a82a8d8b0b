import { describe, expect, test } from 'vitest';
import { followPlate } from '../../../../daemon/probe/simulated/probe.ts';
import {
  type ChartPoint,
  chartPointSchema,
  dialChartSchema,
  emptyChart,
  fallingIn,
  isCharted,
  meanAt,
  peakAt,
  pointOf,
  withPoint,
} from '../../../../shared/iron/dial/chart.ts';
import { figuresOf } from '../../../../shared/iron/dial/figures.ts';
import { lagAllowanceK } from '../../../../shared/iron/dial/lag.ts';
import { markNumber } from '../../../../shared/iron/dial/mark.ts';
import { curveThrough, lastUnder, placesOf, valueAt } from '../../../../shared/iron/dial/pchip.ts';
import { chartOf, point } from './charts.ts';

describe('a chart keeps one point a mark', () => {
  test('the newest counts, the one before is kept as earlier', () => {
    const chart = [point(3, 140), point(5, 166), point(3, 143)].reduce(withPoint, emptyChart);
    expect(chart.points.map((p) => [p.mark, p.meanC])).toEqual([
      [3, 143],
      [5, 166],
    ]);
    expect(chart.earlier.map((p) => p.meanC)).toEqual([140]);
    expect(dialChartSchema.parse(JSON.parse(JSON.stringify(chart)))).toEqual(chart);
  });

  test('marks closer than anybody sets a dial are one; a typed point replaces a measured one too', () => {
    const typed: ChartPoint = { ...point(3.04, 150), kind: 'typed', cycles: 0 };
    const chart = withPoint(chartOf([3, 140]), typed);
    expect(chart.points).toEqual([typed]);
    expect(isCharted(chart, 3)).toBe(true);
    expect(isCharted(chart, 3.2)).toBe(false);
  });

  test('points that can’t be are refused by name', () => {
    const wrong = chartPointSchema.safeParse({ ...point(3, 140), peakC: 130 });
    expect(wrong.error?.issues[0]?.message).toBe('trough, mean and peak must rise in that order');
  });
});

describe('between and beyond the marks', () => {
  const chart = chartOf([1, 110], [3, 140], [4, 160], [5, 166]);

  test('goes through its points, rises between them, and ends where they end', () => {
    expect([1, 3, 4, 5].map((m) => meanAt(chart, m))).toEqual([110, 140, 160, 166]);
    expect(meanAt(chart, 2)).toBeGreaterThan(110);
    expect(meanAt(chart, 2)).toBeLessThan(140);
    for (const m of [0.99, 5.01, Number.NaN, -1]) expect(meanAt(chart, m)).toBeNull();
    expect(meanAt(emptyChart, 3)).toBeNull();
  });

  test('peaks only where they are known', () => {
    const some = withPoint(chart, { ...point(6, 170), kind: 'typed', peakC: null, troughC: null });
    expect(peakAt(some, 5)).toBe(178);
    expect(peakAt(some, 5.5)).toBeNull();
    expect(meanAt(some, 5.5)).not.toBeNull();
  });

  test('one point is known at its own mark alone', () => {
    expect(meanAt(chartOf([3, 140]), 3)).toBe(140);
    expect(meanAt(chartOf([3, 140]), 3.1)).toBeNull();
  });
});

test('a chart that falls is named, chance aside', () => {
  expect(fallingIn(chartOf([1, 110], [2, 108], [3, 140]))).toBeNull();
  expect(fallingIn(chartOf([1, 110], [2, 130], [3, 120]))).toEqual({ fromMark: 2, toMark: 3, byK: 10 });
});

test('words on a dial count from the coldest up', () => {
  expect(markNumber('wool', ['silk', 'wool', 'cotton'])).toBe(2);
  expect(markNumber('linen', ['silk', 'wool', 'cotton'])).toBeNull();
  expect(markNumber(2.5, ['silk', 'wool', 'cotton'])).toBe(2.5);
});

describe('curves', () => {
  test('flat pieces stay flat and give their ends; every crossing is found', () => {
    const curve = curveThrough([
      { x: 0, y: 0 },
      { x: 1, y: 2 },
      { x: 2, y: 2 },
      { x: 3, y: 0 },
    ]);
    expect(valueAt(curve, 1.5)).toBe(2);
    expect(placesOf(curve, 2)).toEqual([1, 2]);
    expect(placesOf(curve, 1)).toHaveLength(2);
    expect(lastUnder(curve, 1)?.x).toBeCloseTo(placesOf(curve, 1)[0] ?? 0, 12);
    expect(lastUnder(curve, 3)).toEqual({ x: 3, atEnd: true });
    expect(lastUnder(curve, -1)).toBeNull();
  });

  test('points that don’t rise in x, and none at all, are refused', () => {
    expect(() => curveThrough([])).toThrow(RangeError);
    expect(() =>
      curveThrough([
        { x: 1, y: 0 },
        { x: 1, y: 1 },
      ]),
    ).toThrow(RangeError);
  });
});

describe('what a lagging probe hides of the peaks', () => {
  const figures = figuresOf(
    [{ fromMs: 0, peakMs: 30_000, toMs: 100_000, peakC: 162, troughC: 141, meanC: 151.5 }],
    null,
  );
  if (figures === null) throw new Error('no figures');

  test('by the formula of a corner, worked out by hand', () => {
    // Rise 21 / 30 = 0.7 K/s, fall 21 / 70 = 0.3 K/s, lag 2 s and 1 s of smoothing: 0.3 * 3 * ln(1 / 0.3) = 1.0836.
    expect(lagAllowanceK(figures, 2)).toBeCloseTo(1.0836, 4);
  });

  test('is just what a first-order lag takes off a sawtooth', () => {
    let junctionC = 141;
    let highestC = 0;
    const at = (s: number) => (s < 30 ? 141 + 0.7 * s : 162 - 0.3 * (s - 30));
    // It trails a long ramp by its whole lag before the corner comes.
    for (let s = 0; s < 60; s += 0.01) {
      junctionC = followPlate(3, junctionC, { fromC: at(s), toC: at(s + 0.01), dtS: 0.01 });
      highestC = Math.max(highestC, junctionC);
    }
    expect(162 - highestC).toBeCloseTo(lagAllowanceK(figures, 2), 3);
  });

  test('a point carries it', () => {
    expect(pointOf({ figures }, 3, '2026-05-01T09:00:00Z', { lagS: 2, madeWith: null })).toMatchObject({
      mark: 3,
      kind: 'measured',
      peakC: 162,
      lagAllowanceK: lagAllowanceK(figures, 2),
    });
  });
});
