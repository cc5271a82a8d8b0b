import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaHeatsOf,
  goingOn,
  heatOf,
  visitedMeanwhile,
  withVisit,
} from '../../shared/heat/work/area-heats.ts';
import { compareLevels } from '../../shared/heat/work/reached.ts';
import type { KeptVisit } from '../../shared/heat/work/visit.ts';
import { pieceOf, reachedAs, visitTo } from '../unit/heat/work/demo.ts';

const piece = pieceOf(2, 4);
const spot = fc.record({
  piece: fc.constantFrom(piece.id, piece.id, piece.id, 'other'),
  version: fc.constant(1),
  side: fc.constantFrom(1 as const, 2 as const),
  area: fc.option(fc.constantFrom(...piece.areas.map((a) => a.id), 'gone'), { nil: null }),
});
const drawn = fc.record({
  spot: fc.option(spot, { nil: null, freq: 8 }),
  corrected: fc.option(
    fc.record({
      spot: fc.option(spot, { nil: null }),
      by: fc.constant('A. Worker'),
      atUtcMs: fc.constant(0),
    }),
    { nil: undefined, freq: 3 },
  ),
  fromUtcMs: fc.integer({ min: 0, max: 100 }).map((s) => s * 1000),
  lengthMs: fc.integer({ min: 0, max: 40 }).map((s) => s * 1000),
  contactMs: fc.constantFrom(0, 700, 9_000, 31_003),
  peakC: fc.option(fc.integer({ min: 90, max: 200 }), { nil: null }),
  reached: fc.constantFrom(null, ...['tack', 'initial', 'intermediate', 'final'].map(reachedAs)),
  presumed: fc.boolean(),
  lapDone: fc.boolean(),
  takenBack: fc.constantFrom(false, false, false, true),
});
/** Any history; each visit has a name of its own. */
const history: fc.Arbitrary<readonly KeptVisit[]> = fc.array(drawn, { maxLength: 30 }).map((all) =>
  all.map(({ lengthMs, corrected, ...visit }, i) => ({
    ...visitTo(piece, null, visit),
    n: i,
    toUtcMs: visit.fromUtcMs + lengthMs,
    ...(corrected === undefined ? {} : { corrected }),
  })),
);

const byEnd = (a: KeptVisit, b: KeptVisit): number =>
  a.toUtcMs - b.toUtcMs || a.fromUtcMs - b.fromUtcMs || a.n - b.n;

describe('what areas have had', () => {
  test('is the same in whatever order the visits come', () => {
    const mixedUp = history.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray([...all], { minLength: all.length })),
    );
    fc.assert(
      fc.property(mixedUp, ([all, mixed]) => {
        expect(areaHeatsOf(piece, mixed)).toEqual(areaHeatsOf(piece, all));
      }),
    );
  });

  test('never falls in stage, laps, peak or time as visits end one after the other', () => {
    fc.assert(
      fc.property(history, (all) => {
        const ends = [...new Set(all.map((v) => v.toUtcMs))].toSorted((a, b) => a - b);
        let before = areaHeatsOf(piece, []);
        for (const end of ends) {
          const after = areaHeatsOf(
            piece,
            all.filter((v) => v.toUtcMs <= end),
          );
          for (const { id } of piece.areas) {
            const [was, is] = [heatOf(before, id), heatOf(after, id)];
            expect(compareLevels(is.reached, was.reached)).toBeGreaterThanOrEqual(0);
            expect(is.laps).toBeGreaterThanOrEqual(was.laps);
            expect(is.peakC ?? 0).toBeGreaterThanOrEqual(was.peakC ?? 0);
            expect(is.contactMs).toBeGreaterThanOrEqual(was.contactMs);
          }
          before = after;
        }
      }),
    );
  });

  test('never falls in stage as visits to areas are added at any time, where no lap is', () => {
    fc.assert(
      fc.property(history, history, (all, added) => {
        const areasAlone = all.filter((v) => !v.lapDone);
        const before = areaHeatsOf(piece, areasAlone);
        const after = areaHeatsOf(piece, [...areasAlone, ...added]);
        for (const { id } of piece.areas)
          expect(compareLevels(heatOf(after, id).reached, heatOf(before, id).reached)).toBeGreaterThanOrEqual(
            0,
          );
      }),
    );
  });

  test('comes to the same folded in two parts as folded whole', () => {
    fc.assert(
      fc.property(history, fc.nat({ max: 140_000 }), (all, cutMs) => {
        const first = areaHeatsOf(
          piece,
          all.filter((v) => v.toUtcMs <= cutMs),
        );
        const rest = all.filter((v) => v.toUtcMs > cutMs).toSorted(byEnd);
        const whole = rest.reduce(
          (heats, visit) =>
            withVisit(heats, piece, visit, {
              own: visitedMeanwhile(piece, all, visit),
              goesOn: goingOn(piece, all).has(visit),
            }),
          first,
        );
        expect(whole).toEqual(areaHeatsOf(piece, all));
      }),
    );
  });

  test('moves with a corrected visit wholly: as if it had been marked there', () => {
    fc.assert(
      fc.property(history, (all) => {
        const marked = all.map(({ corrected, ...visit }) =>
          corrected === undefined ? visit : { ...visit, spot: corrected.spot },
        );
        expect(areaHeatsOf(piece, all)).toEqual(areaHeatsOf(piece, marked));
      }),
    );
  });
});
