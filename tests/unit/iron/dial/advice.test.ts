import { describe, expect, test } from 'vitest';
import { dialFor, highestMark, type Wanted } from '../../../../shared/iron/dial/advice.ts';
import { type DialChart, emptyChart, withPoint } from '../../../../shared/iron/dial/chart.ts';
import { markFigure } from '../../../../shared/words/dial.ts';
import { chartOf, point } from './charts.ts';

const stage = { lowC: 140, targetC: 150, highC: 170 };
const wanted: Wanted = {
  stage,
  fabricLimitC: 190,
  cementLimitC: null,
  uncertaintyK: 0,
  unevennessK: 0,
};
/** Straight: 10 K a mark, peaks 12 K over the mean. */
const chart = chartOf([1, 120], [3, 140], [5, 160], [7, 180]);

describe('where to set the dial', () => {
  test('at the target where the peaks allow it', () => {
    expect(dialFor(chart, wanted)).toMatchObject({
      kind: 'set',
      heldBy: null,
      interpolated: true,
      typed: false,
    });
    const advice = dialFor(chart, wanted);
    if (advice.kind !== 'set') throw new Error(advice.kind);
    expect(advice.mark).toBeCloseTo(4, 9);
    expect(advice.meanC).toBeCloseTo(150, 9);
    expect(advice.hottestC).toBeCloseTo(162, 9);
  });

  test('uncertainty, scatter, unevenness and lag lower it until the hottest peak is at the stage’s high', () => {
    const scattered = {
      ...chart,
      points: chart.points.map((p) => ({ ...p, peakSpreadK: 2, lagAllowanceK: 1 })),
    };
    const advice = dialFor(scattered, { ...wanted, uncertaintyK: 3, unevennessK: 4 });
    // By hand: hypot(3, 2 * 2) = 5, so peaks may come to 170 - 5 - 4 - 1 = 160, and means to 148: mark 3.8.
    expect(advice).toMatchObject({ kind: 'set', heldBy: 'stage-high' });
    if (advice.kind !== 'set') throw new Error(advice.kind);
    expect(advice.mark).toBeCloseTo(3.8, 9);
    expect(advice.hottestC).toBeCloseTo(170, 9);
    expect(advice.hottestC).toBeLessThanOrEqual(170);
  });

  test('the limit that holds is named', () => {
    expect(dialFor(chart, { ...wanted, fabricLimitC: 158 })).toMatchObject({ heldBy: 'fabric-limit' });
    expect(dialFor(chart, { ...wanted, cementLimitC: 157 })).toMatchObject({ heldBy: 'cement-limit' });
    expect(dialFor(chart, { ...wanted, cementLimitC: 300 })).toMatchObject({ heldBy: null });
  });

  test('a mark that was measured is not called a guess; a typed neighbour is said', () => {
    const at5 = { ...wanted, stage: { ...stage, targetC: 160, highC: 180 } };
    expect(dialFor(chart, at5)).toMatchObject({ mark: 5, interpolated: false });
    const typed = withPoint(chart, { ...point(5, 160), kind: 'typed' });
    expect(dialFor(typed, wanted)).toMatchObject({ typed: true });
  });

  test('the end of the chart is as near as it comes', () => {
    const short = chartOf([1, 120], [3, 145]);
    expect(dialFor(short, wanted)).toMatchObject({ kind: 'set', mark: 3, heldBy: 'chart' });
    const high = chartOf([5, 155], [7, 180]);
    expect(dialFor(high, wanted)).toMatchObject({ kind: 'set', mark: 5, heldBy: 'chart' });
  });

  test('a single mark that fits is enough', () => {
    expect(dialFor(chartOf([3, 151]), wanted)).toMatchObject({ kind: 'set', mark: 3, interpolated: false });
  });
});

describe('when the iron can’t', () => {
  test('a swing that leaves no room between the stage’s low and its ceiling', () => {
    const wide = [point(1, 120, 25), point(5, 160, 25)].reduce(withPoint, emptyChart);
    const tight = { ...wanted, stage: { lowC: 145, targetC: 150, highC: 160 } };
    const advice = dialFor(wide, tight);
    expect(advice).toMatchObject({ kind: 'too-wide', ceiling: 'stage-high' });
    // By hand: 25 over the mean, 15 between low and high.
    if (advice.kind === 'too-wide') expect(advice.byK).toBeCloseTo(10, 9);
  });

  test.each<[string, DialChart]>([
    ['too-cold', chartOf([1, 110], [2, 120])],
    ['too-hot', chartOf([6, 170], [7, 180])],
    ['few-marks', chartOf([1, 120])],
    ['few-marks', emptyChart],
    ['falls', chartOf([1, 160], [2, 120])],
  ])('%s', (kind, of) => {
    expect(dialFor(of, wanted).kind).toBe(kind);
  });

  test('a chart without peaks', () => {
    const noPeaks = { ...chart, points: chart.points.map((p) => ({ ...p, peakC: null, troughC: null })) };
    expect(dialFor(noPeaks, wanted)).toEqual({ kind: 'few-marks', charted: 0 });
    expect(highestMark(noPeaks, wanted)).toBeNull();
  });
});

describe('the highest mark under the limits', () => {
  test('where the peaks pass the lower of them, with what is added to them', () => {
    const highest = highestMark(chart, { ...wanted, uncertaintyK: 4 });
    // By hand: means to 190 - 12 - 4 = 174.
    expect(highest?.mark).toBeCloseTo(6.4, 9);
    expect(highest?.atEnd).toBe(false);
    expect(highestMark(chart, { ...wanted, cementLimitC: 160 })?.mark).toBeCloseTo(3.8, 9);
  });

  test('the end of the chart where all keep under it, none where none does', () => {
    expect(highestMark(chart, { ...wanted, fabricLimitC: 300 })).toEqual({ mark: 7, atEnd: true });
    expect(highestMark(chart, { ...wanted, fabricLimitC: 100 })).toBeNull();
  });
});

test('a mark is shown to a tenth and never above what was worked out', () => {
  expect([3.8, 3.79, 3.899, 4, 0.3].map(markFigure)).toEqual(['3.8', '3.7', '3.8', '4', '0.3']);
});
