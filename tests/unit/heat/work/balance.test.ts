import { describe, expect, expectTypeOf, test } from 'vitest';
import type { AreaHeats } from '../../../../shared/heat/work/area-heat.ts';
import { type Balance, balanceOf, endsOf } from '../../../../shared/heat/work/balance.ts';
import type { Next } from '../../../../shared/heat/work/next.ts';
import { sideHeat } from '../../../../shared/heat/work/sides.ts';
import type { Balance as BalanceMessage, Next as NextMessage } from '../../../../shared/messages/piece.ts';
import type { SideId } from '../../../../shared/piece/piece.ts';
import { pieceNextWords } from '../../../../shared/words/piece-work.ts';
import { heatAt, pieceOf, reachedAs } from './demo.ts';

const piece = pieceOf(1, 6);
/** Laps of a stage over the cloth of a side, from the first end to the last. */
const had = (side: SideId, stage: string, ...laps: readonly number[]): AreaHeats => {
  const cloth = piece.areas.filter((a) => a.side === side && a.kind === 'cloth');
  return Object.fromEntries(
    cloth.flatMap(({ id }, i) => {
      const count = laps[i] ?? laps[0] ?? 0;
      return count === 0 ? [] : [[id, heatAt(stage, count)]];
    }),
  );
};

describe('what a side has had', () => {
  test('is the stage that all its cloth has had, and laps by the size of the areas', () => {
    expect(sideHeat(piece, {}, 1)).toEqual({ reached: null, laps: 0 });
    expect(sideHeat(piece, had(1, 'initial', 1, 1, 0, 1, 1, 1), 1)).toEqual({ reached: null, laps: 0 });
    expect(sideHeat(piece, had(1, 'initial', 2, 2, 1, 1, 1, 1), 1)).toMatchObject({
      reached: reachedAs('initial'),
      laps: expect.closeTo(8 / 6, 9) as number,
    });
    const uneven = pieceOf(1, 3);
    const [wide, ...narrow] = uneven.areas.filter((a) => a.side === 1 && a.kind === 'cloth');
    if (wide === undefined) throw new Error('no cloth');
    const sized = { ...uneven, areas: [{ ...wide, columns: 3 }, ...narrow] };
    const heats = Object.fromEntries(sized.areas.map((a, i) => [a.id, heatAt('initial', i === 0 ? 4 : 1)]));
    expect(sideHeat(sized, heats, 1).laps).toBeCloseTo((4 * 3 + 6 + 6) / 15, 9);
  });

  test('counts what is further on as laps on top of those of the rest', () => {
    const heats = { ...had(1, 'initial', 2), ...had(1, 'final', 1, 0, 0, 0, 0, 0) };
    expect(sideHeat(piece, heats, 1)).toEqual({
      reached: reachedAs('initial'),
      laps: expect.closeTo(2 + 1 / 6, 9) as number,
    });
  });
});

describe('balance', () => {
  const both = (a: AreaHeats, b: AreaHeats) => balanceOf(piece, { ...a, ...b });

  test('is not told before both sides have cloth of one stage', () => {
    expect(balanceOf(piece, {})).toEqual({ kind: 'not-compared', why: 'no-heat' });
    expect(both(had(1, 'initial', 3), {})).toEqual({ kind: 'not-compared', why: 'no-heat' });
    expect(both(had(1, 'final', 1), had(2, 'initial', 9))).toEqual({
      kind: 'not-compared',
      why: 'stages-differ',
    });
    // Tack and initial shrink are of one level.
    expect(both(had(1, 'tack', 1), had(2, 'initial', 1))).toEqual({ kind: 'even' });
  });

  test('is even up to one lap, and beyond it says which side is ahead by how much', () => {
    expect(both(had(1, 'initial', 2), had(2, 'initial', 1))).toEqual({ kind: 'even' });
    expect(both(had(1, 'initial', 2, 2, 2, 3, 2, 2), had(2, 'initial', 1))).toEqual({
      kind: 'ahead',
      what: 'side',
      side: 1,
      byLaps: expect.closeTo(1 + 1 / 6, 9) as number,
    });
    expect(both(had(1, 'initial', 1), had(2, 'initial', 4))).toMatchObject({ side: 2, byLaps: 3 });
  });

  test('tells an end that is ahead of the other, the furthest first, and a side before it', () => {
    const first = had(1, 'initial', 3, 3, 1, 1, 1, 1);
    expect(both(first, had(2, 'initial', 1))).toEqual({
      kind: 'ahead',
      what: 'first-end',
      side: 1,
      byLaps: 2,
    });
    expect(both(first, had(2, 'initial', 1, 1, 1, 1, 4, 4))).toEqual({
      kind: 'ahead',
      what: 'last-end',
      side: 2,
      byLaps: 3,
    });
    expect(both(had(1, 'initial', 6, 6, 1, 1, 1, 1), had(2, 'initial', 1))).toMatchObject({ what: 'side' });
    // Also while sides can't be compared yet.
    expect(both(first, {})).toMatchObject({ what: 'first-end', side: 1 });
    expect(both(had(1, 'initial', 3, 3, 1, 1, 0, 0), {})).toMatchObject({ kind: 'not-compared' });
  });

  test('of one side compares its ends alone', () => {
    const single = pieceOf(1, 6, ['Outside']);
    expect(balanceOf(single, had(1, 'initial', 1))).toEqual({ kind: 'not-compared', why: 'one-side' });
    expect(balanceOf(single, had(1, 'initial', 1, 1, 1, 1, 3, 3))).toMatchObject({ what: 'last-end' });
  });

  test('has the outer thirds of the columns as ends, and none where one area spans all', () => {
    const { first, last } = endsOf(piece, 1);
    expect([first, last].map((end) => end.map((a) => a.name))).toEqual([
      ['Bay 1', 'Bay 2'],
      ['Bay 5', 'Bay 6'],
    ]);
    expect(endsOf(pieceOf(3, 1), 1)).toEqual({ first: [], last: [] });
  });
});

test('what crosses the wire is what is worked out', () => {
  expectTypeOf<BalanceMessage>().toEqualTypeOf<Mutable<Balance>>();
  expectTypeOf<NextMessage>().toEqualTypeOf<Mutable<Next>>();
  for (const words of Object.values(pieceNextWords)) expect(words.split(' ').length).toBeLessThanOrEqual(5);
});

type Mutable<T> = T extends unknown ? { -readonly [K in keyof T]: T[K] } : never;
