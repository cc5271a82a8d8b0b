import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AreaHeats } from '../../shared/heat/work/area-heat.ts';
import { balanceOf } from '../../shared/heat/work/balance.ts';
import { proposeNext } from '../../shared/heat/work/next.ts';
import { capC } from '../../shared/heat/work/order.ts';
import type { Piece } from '../../shared/piece/piece.ts';
import { heatAt, pieceOf, stageOf, stages } from '../unit/heat/work/demo.ts';

const piece = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 9 }))
  .map(([rows, columns]) => pieceOf(rows, columns));
const heat = fc.option(
  fc
    .tuple(fc.constantFrom('tack', 'initial', 'intermediate', 'final'), fc.integer({ min: 1, max: 5 }))
    .map(([stage, laps]) => heatAt(stage, laps)),
  { nil: null, freq: 4 },
);
/** A piece with any heat on its areas. */
const worked = piece.chain((p) =>
  fc.tuple(
    fc.constant(p),
    fc
      .array(heat, { minLength: p.areas.length, maxLength: p.areas.length })
      .map(
        (all): AreaHeats =>
          Object.fromEntries(p.areas.flatMap(({ id }, i) => (all[i] ? [[id, all[i]] as const] : []))),
      ),
  ),
);
const mirrorColumn = (p: Piece, a: Piece['areas'][number]): number => p.columns - a.column - a.columns;

/** The same heat on the area at the same place of the other side, or of the other end. */
const mirrored = (p: Piece, heats: AreaHeats, how: 'sides' | 'ends'): AreaHeats =>
  Object.fromEntries(
    p.areas.flatMap((a) => {
      const from = p.areas.find(
        (b) =>
          b.row === a.row &&
          (how === 'sides'
            ? b.side !== a.side && b.column === a.column
            : b.side === a.side && b.column === mirrorColumn(p, a)),
      );
      const had = from === undefined ? undefined : heats[from.id];
      return had === undefined ? [] : [[a.id, had] as const];
    }),
  );

describe('balance', () => {
  test('is never ahead where the history of one side and end mirrors that of the other', () => {
    fc.assert(
      fc.property(worked, ([p, heats]) => {
        // Half of the areas, those of side 1 and of the first half, tell the rest.
        const half = Object.fromEntries(
          p.areas.flatMap((a) => {
            const seen = p.areas.find(
              (b) => b.side === 1 && b.row === a.row && b.column === Math.min(a.column, mirrorColumn(p, a)),
            );
            const had = seen === undefined ? undefined : heats[seen.id];
            return had === undefined ? [] : [[a.id, had] as const];
          }),
        );
        expect(balanceOf(p, half).kind).not.toBe('ahead');
      }),
      { numRuns: 300 },
    );
  });

  test('changes over with the sides and with the ends', () => {
    fc.assert(
      fc.property(worked, ([p, heats]) => {
        const told = balanceOf(p, heats);
        const sides = balanceOf(p, mirrored(p, heats, 'sides'));
        const ends = balanceOf(p, mirrored(p, heats, 'ends'));
        if (told.kind !== 'ahead') {
          expect([sides, ends]).toEqual([told, told]);
          return;
        }
        expect(sides).toMatchObject({ kind: 'ahead', byLaps: expect.closeTo(told.byLaps, 9) as number });
        expect(ends).toMatchObject({ kind: 'ahead', byLaps: expect.closeTo(told.byLaps, 9) as number });
        expect(told.byLaps).toBeGreaterThan(1);
        if (told.what === 'side') {
          expect(sides).toMatchObject({ what: 'side', side: told.side === 1 ? 2 : 1 });
          expect(ends).toMatchObject({ what: 'side', side: told.side });
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('the area to iron next', () => {
  const at = (p: Piece) =>
    fc.option(
      fc.constantFrom(...p.areas).map(({ side, id }) => ({ side, area: id })),
      { nil: null },
    );
  const asked = worked.chain(([p, heats]) =>
    fc.tuple(
      ...([fc.constant(p), fc.constant(heats), at(p)] as const),
      fc.constantFrom('tack', 'intermediate', 'final'),
      fc.option(fc.constantFrom(100, 130, 400), { nil: null }),
      fc.integer({ min: 1, max: 3 }),
    ),
  );

  test('is an area of the piece, not the one that the iron is on, and never bonded over the cement limit', () => {
    fc.assert(
      fc.property(asked, ([p, heats, here, id, cementLimitC, laps]) => {
        const stage = stageOf(id);
        const cap = capC(p, heats, stages, here?.side ?? 1);
        const next = proposeNext({ piece: p, heats, stages, stage, at: here, capC: cap, cementLimitC, laps });
        if (next === null) return;
        const area = p.areas.find((a) => a.id === next.area);
        expect(area?.side).toBe(next.side);
        expect(next.area).not.toBe(here?.area);
        if (area?.kind !== 'cloth')
          expect(stage.targetC).toBeLessThanOrEqual(cementLimitC ?? stageOf('tack').targetC);
      }),
      { numRuns: 500 },
    );
  });

  test('comes to an end when it is followed, whatever was done before', () => {
    fc.assert(
      fc.property(asked, ([p, before, here, id, cementLimitC, laps]) => {
        const stage = stageOf(id);
        let heats = before;
        let place = here;
        let shrunkLast: string | null = null;
        let steps = 0;
        for (; steps < 4000; steps += 1) {
          const cap = capC(p, heats, stages, place?.side ?? 1);
          const next = proposeNext({
            piece: p,
            heats,
            stages,
            stage,
            at: place,
            capC: cap,
            cementLimitC,
            laps,
          });
          if (next === null) break;
          const had = heats[next.area];
          const reached = next.why === 'first-shrink' ? 'initial' : id;
          const again = had?.reached?.targetC === stageOf(reached).targetC ? had.lapsAtStage : 0;
          heats = { ...heats, [next.area]: { ...heatAt(reached, again + 1), lastUtcMs: steps } };
          place = { side: next.side, area: next.area };
          shrunkLast = next.why === 'first-shrink' ? next.area : null;
        }
        expect(steps).toBeLessThan(4000);
        // What the iron is on has its stage by staying there; where it was to be shrunk first, that is still to come.
        const cloth = p.areas.filter((a) => a.kind === 'cloth' && a.id !== here?.area && a.id !== shrunkLast);
        for (const a of cloth)
          expect(heats[a.id]?.reached?.targetC ?? 0).toBeGreaterThanOrEqual(stage.targetC);
      }),
      { numRuns: 60 },
    );
  });
});
