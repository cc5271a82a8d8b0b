import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dialFor, type Wanted } from '../../shared/iron/dial/advice.ts';
import {
  type ChartPoint,
  type DialChart,
  emptyChart,
  meanAt,
  withPoint,
} from '../../shared/iron/dial/chart.ts';
import { curveThrough, lastUnder, placesOf, valueAt } from '../../shared/iron/dial/pchip.ts';

const numRuns = 1000;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Points whose x rise by 0.1 at least. */
const points = fc
  .array(fc.tuple(between(0.1, 10), between(-200, 200)), { minLength: 1, maxLength: 12 })
  .map((steps) => {
    let x = 0;
    return steps.map(([dx, y]) => {
      x += dx;
      return { x, y };
    });
  });

function known(value: number | null): number {
  if (value === null) throw new Error('outside');
  return value;
}

describe('a shape-preserving curve', () => {
  it('goes through its points and is nothing outside them', () => {
    fc.assert(
      fc.property(points, (ps) => {
        const curve = curveThrough(ps);
        for (const { x, y } of ps) expect(valueAt(curve, x)).toBe(y);
        expect(valueAt(curve, (ps[0]?.x ?? 0) - 1e-6)).toBeNull();
        expect(valueAt(curve, (ps.at(-1)?.x ?? 0) + 1e-6)).toBeNull();
      }),
      { numRuns },
    );
  });

  it('between two neighbours goes only from one to the other: no overshoot, no turn', () => {
    fc.assert(
      fc.property(points, (ps) => {
        const curve = curveThrough(ps);
        for (const [i, to] of ps.entries()) {
          const from = ps[i - 1];
          if (from === undefined) continue;
          const ys = Array.from({ length: 21 }, (_, n) =>
            known(valueAt(curve, Math.min(to.x, from.x + ((to.x - from.x) * n) / 20))),
          );
          const way = Math.sign(to.y - from.y);
          // A double's rounding of values up to 200.
          expect(ys.every((y, n) => (y - (ys[n - 1] ?? y)) * way >= -1e-9)).toBe(true);
          expect(Math.min(...ys)).toBeGreaterThanOrEqual(Math.min(from.y, to.y));
          expect(Math.max(...ys)).toBeLessThanOrEqual(Math.max(from.y, to.y));
        }
      }),
      { numRuns },
    );
  });

  it('keeps to the straight line through points that lie on one', () => {
    fc.assert(
      fc.property(points, between(-20, 20), (ps, slope) => {
        const curve = curveThrough(ps.map(({ x }) => ({ x, y: slope * x })));
        const [first, last] = [ps[0]?.x ?? 0, ps.at(-1)?.x ?? 0];
        for (let n = 0; n <= 10; n++) {
          const x = Math.min(last, first + ((last - first) * n) / 10);
          expect(known(valueAt(curve, x))).toBeCloseTo(slope * x, 8);
        }
      }),
      { numRuns },
    );
  });

  it('is inverted: each place found has the value, and each that has it is found', () => {
    fc.assert(
      fc.property(points, between(0, 1), (ps, share) => {
        const curve = curveThrough(ps);
        const [first, last] = [ps[0]?.x ?? 0, ps.at(-1)?.x ?? 0];
        const x = Math.min(last, first + (last - first) * share);
        const y = known(valueAt(curve, x));
        const places = placesOf(curve, y);
        for (const place of places) expect(Math.abs(known(valueAt(curve, place)) - y)).toBeLessThan(1e-9);
        const nearest = Math.min(...places.map((p) => Math.abs(known(valueAt(curve, p)) - y)));
        expect(nearest).toBeLessThan(1e-9);
      }),
      { numRuns },
    );
  });

  it('keeps under a value up to where it says, and passes it right after', () => {
    fc.assert(
      fc.property(points, between(-200, 200), (ps, y) => {
        const curve = curveThrough(ps);
        const last = lastUnder(curve, y);
        if (last === null) {
          expect(ps[0]?.y ?? 0).toBeGreaterThan(y);
          return;
        }
        const first = ps[0]?.x ?? 0;
        for (let n = 0; n <= 20; n++)
          expect(
            known(valueAt(curve, Math.min(last.x, first + ((last.x - first) * n) / 20))),
          ).toBeLessThanOrEqual(y);
        if (!last.atEnd) expect(ps.some((p) => p.x > last.x && p.y > y)).toBe(true);
      }),
      { numRuns },
    );
  });
});

/** Charts that rise as a dial does. */
const charts: fc.Arbitrary<DialChart> = fc
  .array(fc.tuple(between(0.2, 2), between(1, 40), between(1, 25), between(0, 3)), {
    minLength: 1,
    maxLength: 6,
  })
  .map((steps) => {
    let mark = 0;
    let meanC = 90;
    let chart = emptyChart;
    for (const [dMark, riseK, halfSwingK, peakSpreadK] of steps) {
      mark += dMark;
      meanC += riseK;
      const point: ChartPoint = {
        mark,
        kind: 'measured',
        meanC,
        peakC: meanC + halfSwingK,
        troughC: meanC - halfSwingK,
        cycles: 5,
        peakSpreadK,
        meanSpreadK: 0.5,
        lagAllowanceK: 0,
        madeWith: null,
        at: '2026-05-01T09:00:00Z',
      };
      chart = withPoint(chart, point);
    }
    return chart;
  });

const wishes: fc.Arbitrary<Wanted> = fc
  .tuple(between(90, 200), between(0, 20), between(0, 20), between(100, 260))
  .chain(([targetC, belowK, aboveK, fabricLimitC]) =>
    fc.record({
      stage: fc.constant({ lowC: targetC - belowK, targetC, highC: targetC + aboveK }),
      fabricLimitC: fc.constant(fabricLimitC),
      cementLimitC: fc.option(between(90, 260)),
      uncertaintyK: between(0, 6),
      unevennessK: between(0, 10),
    }),
  );

describe('where to set the dial', () => {
  const hottestOf = ({ peakC, peakSpreadK }: ChartPoint, { uncertaintyK, unevennessK }: Wanted): number =>
    (peakC ?? Number.NaN) + Math.hypot(uncertaintyK, 2 * (peakSpreadK ?? 0)) + unevennessK;

  it('is within the marks, the stage and the limits, and no measured mark is better; else none would do', () => {
    fc.assert(
      fc.property(charts, wishes, (chart, wanted) => {
        const { stage, fabricLimitC, cementLimitC } = wanted;
        const ceilingC = Math.min(stage.highC, fabricLimitC, cementLimitC ?? fabricLimitC);
        const advice = dialFor(chart, wanted);
        // Marks up to the first that is too hot: what lies beyond is never advised.
        const hot = chart.points.findIndex((p) => hottestOf(p, wanted) > ceilingC);
        const allowed = (hot === -1 ? chart.points : chart.points.slice(0, hot)).filter(
          (p) => p.meanC >= stage.lowC,
        );
        if (advice.kind !== 'set') {
          expect(allowed).toEqual([]);
          return;
        }
        expect(advice.hottestC).toBeLessThanOrEqual(ceilingC + 1e-9);
        expect(advice.meanC).toBeGreaterThanOrEqual(stage.lowC - 1e-6);
        expect(meanAt(chart, advice.mark)).toBe(advice.meanC);
        for (const p of allowed)
          expect(Math.abs(advice.meanC - stage.targetC)).toBeLessThanOrEqual(
            Math.abs(p.meanC - stage.targetC) + 1e-9,
          );
        const highest = advice.highest;
        expect(highest === null || highest.mark >= advice.mark).toBe(true);
      }),
      { numRuns },
    );
  });

  it('more uncertainty, unevenness or a lower limit never sets it higher', () => {
    fc.assert(
      fc.property(charts, wishes, between(0, 5), (chart, wanted, moreK) => {
        const before = dialFor(chart, wanted);
        const after = dialFor(chart, {
          ...wanted,
          uncertaintyK: wanted.uncertaintyK + moreK,
          unevennessK: wanted.unevennessK + moreK,
          fabricLimitC: wanted.fabricLimitC - moreK,
        });
        if (after.kind !== 'set') return;
        if (before.kind !== 'set') throw new Error('a harder wish can be met, an easier one can’t');
        expect(after.mark).toBeLessThanOrEqual(before.mark + 1e-9);
      }),
      { numRuns },
    );
  });
});
