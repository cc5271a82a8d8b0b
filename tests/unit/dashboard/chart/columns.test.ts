import { describe, expect, it } from 'vitest';
import {
  type Columns,
  commonGaps,
  extentOf,
  gapsOf,
  peakMs,
  pointsOf,
} from '../../../../dashboard/chart/columns.ts';

type Row = readonly [tMs: number, minC: number | null, maxC: number | null, fault?: string];
const columns = (...rows: readonly Row[]): Columns => ({
  id: 'board/1',
  tMs: rows.map(([tMs]) => tMs),
  minC: rows.map(([, minC]) => minC),
  maxC: rows.map(([, , maxC]) => maxC),
  fault: rows.map(([, , , fault]) => fault ?? null),
});
const gappy = columns([0, 20, 20], [100, null, null, 'open'], [300, 30, 50], [400, null, null, 'silent']);

describe('the line through a probe’s buckets', () => {
  it('goes through the lowest and the highest of each, in the order that leads on best', () => {
    const points = pointsOf(columns([0, 20, 20], [10, 21, 40], [20, 35, 60], [30, 30, 58]));
    expect(points.map(({ y }) => y)).toEqual([20, 21, 40, 35, 60, 58, 30]);
    expect(points.map(({ x }) => x)).toEqual([0, 10, 10, 20, 20, 30, 30]);
  });

  it('breaks where there is no reading', () => {
    expect(pointsOf(gappy).map(({ y }) => y)).toEqual([20, Number.NaN, 30, 50, Number.NaN]);
  });
});

describe('gaps', () => {
  it('last until the next reading, or as far as is known', () => {
    expect(gapsOf(gappy, 900)).toEqual([
      { fromMs: 100, toMs: 300, fault: 'open' },
      { fromMs: 400, toMs: 900, fault: 'silent' },
    ]);
    expect(gapsOf(gappy, 10).at(-1)).toMatchObject({ fromMs: 400, toMs: 400 });
  });

  it('of several probes are those that all of them have', () => {
    const other = columns(
      [0, null, null, 'starting'],
      [200, 25, 25],
      [250, null, null, 'open'],
      [350, 26, 26],
    );
    expect(commonGaps([gappy, other], 900)).toEqual([
      { fromMs: 100, toMs: 200, fault: 'open' },
      { fromMs: 250, toMs: 300, fault: 'open' },
    ]);
    expect(commonGaps([gappy], 900)).toEqual(gapsOf(gappy, 900));
    expect(commonGaps([], 900)).toEqual([]);
  });
});

describe('what was read', () => {
  it('has its lowest, its highest, and when that was', () => {
    expect(extentOf([gappy, columns([5, 10, 90])])).toEqual({ lowC: 10, highC: 90 });
    expect(peakMs([gappy, columns([5, 10, 90])])).toBe(5);
    expect([extentOf([]), peakMs([columns([0, null, null, 'open'])])]).toEqual([null, null]);
  });
});
