import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaHeatsOf } from '../../shared/heat/work/area-heats.ts';
import type { KeptVisit, Spot } from '../../shared/heat/work/visit.ts';
import type { PieceNote } from '../../shared/shop/note.ts';
import { emptyShop, foldShop, type Shop, type ShopInput, visitsNow } from '../../shared/shop/shop.ts';
import { pieceOf, visitTo } from '../unit/heat/work/demo.ts';

/** The shop fold over what watches tell, what named persons say, and what the book has of before. */

const piece = pieceOf(2, 4);
const sideOf = (area: string | null): 1 | 2 => piece.areas.find(({ id }) => id === area)?.side ?? 1;
const area = fc.option(fc.constantFrom(...piece.areas.map(({ id }) => id)), { nil: null });

/** The tellings of one visit, as it goes on: each comes further than the one before. */
const tellings = (n: number): fc.Arbitrary<readonly KeptVisit[]> =>
  fc
    .record({
      area,
      session: fc.constantFrom('one', 'two'),
      ironId: fc.constantFrom('big', 'small'),
      fromS: fc.nat({ max: 100 }),
      tellings: fc.array(
        fc.record({ moreS: fc.integer({ min: 1, max: 10 }), takenBack: fc.boolean(), lapDone: fc.boolean() }),
        { minLength: 1, maxLength: 4 },
      ),
    })
    .map(({ area: id, session, ironId, fromS, tellings: all }) => {
      let toS = fromS;
      return all.map(({ moreS, ...more }) => {
        toS += moreS;
        const own = piece.areas.find((a) => a.id === id) ?? null;
        const times = { fromUtcMs: fromS * 1000, toUtcMs: toS * 1000, contactMs: (toS - fromS) * 1000 };
        return visitTo(piece, own, { n, session, ironId, ...times, ...more });
      });
    });

const visited: fc.Arbitrary<readonly (readonly KeptVisit[])[]> = fc
  .integer({ min: 0, max: 6 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, n) => tellings(n))));

const noted: fc.Arbitrary<readonly PieceNote[]> = fc
  .uniqueArray(
    fc.record({
      atUtcMs: fc.nat({ max: 20 }),
      session: fc.constantFrom('one', 'two'),
      visit: fc.nat({ max: 6 }),
      to: fc.option(area, { nil: undefined }),
    }),
    { maxLength: 8, selector: ({ atUtcMs }) => atUtcMs },
  )
  .map((all) =>
    all.map(({ atUtcMs, session, visit, to }) => ({
      commandId: `note-${atUtcMs}`,
      piece: piece.id,
      atUtcMs,
      note: {
        kind: 'corrected',
        session,
        visit,
        to: to === undefined ? null : { side: sideOf(to), area: to },
        by: 'A. Worker',
      },
    })),
  );

const inputsOf = (visits: readonly (readonly KeptVisit[])[], notes: readonly PieceNote[]): ShopInput[] => [
  ...visits.flat().map((visit): ShopInput => ({ kind: 'visit', visit })),
  ...notes.map((note): ShopInput => ({ kind: 'note', note })),
];
const folded = (inputs: readonly ShopInput[]): Shop => inputs.reduce(foldShop, emptyShop);

/** What counts of it, in one order. */
const counting = (shop: Shop): readonly KeptVisit[] =>
  visitsNow(shop).toSorted((a, b) => a.n - b.n || (a.session < b.session ? -1 : 1));

/** All that came, in one order and in another, some of it twice. */
const orders = fc.tuple(visited, noted).chain(([visits, notes]) => {
  const inputs = inputsOf(visits, notes);
  return fc.record({
    visits: fc.constant(visits),
    notes: fc.constant(notes),
    inputs: fc.constant(inputs),
    mixed: fc.shuffledSubarray(inputs, { minLength: inputs.length }),
    twice: fc.subarray(inputs),
  });
});

describe('what the shop knows', () => {
  test('is the same in whatever order it was heard, and hearing it twice changes nothing', () => {
    fc.assert(
      fc.property(orders, ({ inputs, mixed, twice }) => {
        const shop = folded(inputs);
        const other = folded([...mixed, ...twice]);
        expect(counting(other)).toEqual(counting(shop));
        expect(other.notes).toEqual(shop.notes);
        expect(areaHeatsOf(piece, visitsNow(other))).toEqual(areaHeatsOf(piece, visitsNow(shop)));
      }),
    );
  });

  test('is the same whether the book is read before what happens or long after', () => {
    fc.assert(
      fc.property(orders, fc.nat({ max: 30 }), ({ visits, notes, inputs }, place) => {
        // The book has of each visit what was told last when it was read: here the first telling.
        const book: ShopInput = { kind: 'book', visits: visits.flatMap((all) => all.slice(0, 1)), notes };
        const cut = Math.min(place, inputs.length);
        expect(counting(folded(inputs.toSpliced(cut, 0, book)))).toEqual(counting(folded(inputs)));
      }),
    );
  });

  test('heard live at one moment counts as it was heard last, whatever the book had', () => {
    const told = visitTo(piece, null, { lapDone: true });
    const back = { ...told, takenBack: true };
    const book: ShopInput = { kind: 'book', visits: [told], notes: [] };
    const live: readonly ShopInput[] = [told, back].map((visit) => ({ kind: 'visit', visit }));
    expect(visitsNow(folded([book, ...live]))).toEqual([]);
    expect(visitsNow(folded([...live, book]))).toEqual([]);
    expect(visitsNow(folded([...live, { kind: 'visit', visit: told }]))).toEqual([told]);
  });
});

test('a correction moves a visit, and the last one counts; the original stays beside it', () => {
  fc.assert(
    fc.property(orders, ({ visits, notes, inputs }) => {
      const corrections = notes.toSorted((a, b) => a.atUtcMs - b.atUtcMs);
      const now = counting(folded(inputs));
      for (const all of visits) {
        const last = all.at(-1);
        if (last === undefined) continue;
        const shown = now.find(({ n, session }) => n === last.n && session === last.session);
        if (last.takenBack) {
          expect(shown).toBeUndefined();
          continue;
        }
        const said = corrections.findLast(
          ({ note }) => note.kind === 'corrected' && note.session === last.session && note.visit === last.n,
        );
        const { corrected, ...original } = shown ?? last;
        expect(shown).toBeDefined();
        expect(original).toEqual(last);
        expect(corrected?.spot).toEqual(said === undefined ? undefined : spotIn(said));
        expect(corrected?.by).toBe(said === undefined ? undefined : 'A. Worker');
      }
    }),
  );
});

function spotIn({ note }: PieceNote): Spot | null {
  if (note.kind !== 'corrected' || note.to === null) return null;
  return { piece: piece.id, version: 1, ...note.to };
}
