import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dryingStageKinds } from '../../shared/cure/cement.ts';
import { type Drying, dryingAfter, foldDrying, nothingDries } from '../../shared/shop/drying.ts';
import { coatFounds, fireAnswers, type ShopEntry, type ShopHappened } from '../../shared/shop/entry.ts';

const START_MS = 1_772_000_000_000;
const coat = fc.constantFrom('a', 'b', 'c', 'none');
const checked = fc.record({
  kind: fc.constant('checked' as const),
  coat,
  stage: fc.constantFrom(...dryingStageKinds),
  found: fc.constantFrom(...coatFounds),
  curedS: fc.integer({ min: 0, max: 100_000 }),
});
const put = fc.uniqueArray(fc.constantFrom('a', 'b', 'c'), { minLength: 1 }).map(
  (ids): ShopHappened => ({
    kind: 'coats',
    cement: 'demo',
    cementVersion: 1,
    piece: 'flap',
    pieceVersion: 1,
    places: ids.map((id) => ({ coat: id, side: 1, area: null })),
    fromUtcMs: START_MS - 60_000,
  }),
);
const happened: fc.Arbitrary<ShopHappened> = fc.oneof(
  { weight: 3, arbitrary: put },
  { weight: 5, arbitrary: checked },
  fc.record({
    kind: fc.constant('ended' as const),
    coat,
    why: fc.constantFrom('done' as const, 'mistake' as const),
  }),
  fc.record({ kind: fc.constant('fire-answer' as const), coat, answer: fc.constantFrom(...fireAnswers) }),
  fc.record({
    kind: fc.constant('air' as const),
    airC: fc.integer({ min: -20, max: 40 }),
    rhPct: fc.constantFrom(null, 20, 80),
    how: fc.constantFrom('probe' as const, 'typed' as const),
    probe: fc.constant(''),
  }),
  fc.constant<ShopHappened>({ kind: 'learn-anew', cement: 'demo' }),
);

const said = (commandId: string, atUtcMs: number, what: ShopHappened): ShopEntry => ({
  commandId,
  atUtcMs,
  zone: 'Etc/UTC',
  simulated: false,
  happened: what,
});

const journal: fc.Arbitrary<readonly ShopEntry[]> = fc
  .array(fc.record({ happened, waitS: fc.integer({ min: 0, max: 5000 }) }), { maxLength: 30 })
  .map((all) => {
    let atUtcMs = START_MS;
    return all.map(({ happened: what, waitS }, i) => {
      atUtcMs += waitS * 1000;
      return said(`c${i}`, atUtcMs, what);
    });
  });

const folded = (entries: readonly ShopEntry[], from = nothingDries): Drying =>
  entries.reduce(foldDrying, from);

test('what dries survives JSON, wherever the journal is cut', () => {
  fc.assert(
    fc.property(journal, fc.nat(30), (entries, cut) => {
      const before: Drying = JSON.parse(JSON.stringify(folded(entries.slice(0, cut))));
      expect(folded(entries.slice(cut), before)).toEqual(folded(entries));
    }),
  );
});

test('a journal that is folded as a whole comes to the same as entry by entry', () => {
  fc.assert(
    fc.property(journal, (entries) => {
      expect(dryingAfter(entries)).toEqual(folded(entries));
    }),
  );
});

test('a tap that was taken back is as if it had never been', () => {
  fc.assert(
    fc.property(journal, checked, fc.nat(30), (entries, mistaken, at) => {
      const tapped = [...entries.slice(0, at), said('x', START_MS, mistaken), ...entries.slice(at)];
      const back = folded([...tapped, said('y', START_MS, { kind: 'taken-back', of: 'x' })]);
      expect(back.coats).toEqual(folded(entries).coats);
    }),
  );
});

test('a clock that is set in the midst changes nothing of what has passed between two moments', () => {
  const far = fc.integer({ min: -10_000_000, max: 10_000_000 });
  fc.assert(
    fc.property(journal, fc.nat(30), far, (entries, at, byMs) => {
      const early = entries.slice(0, at);
      const setUtcMs = (early.at(-1)?.atUtcMs ?? START_MS) + byMs;
      const along = (entry: ShopEntry): ShopEntry => ({
        ...entry,
        atUtcMs: entry.atUtcMs + byMs,
        happened:
          entry.happened.kind === 'coats'
            ? { ...entry.happened, fromUtcMs: entry.happened.fromUtcMs + byMs }
            : entry.happened,
      });
      const set = said('clock', setUtcMs, {
        kind: 'clock',
        byMs,
        while: 'running',
        startUtcMs: null,
        earlierByMs: 0,
      });
      const withStep = folded([...early, set, ...entries.slice(at).map(along)]);
      const without = folded(entries.map(along));
      expect({ ...withStep, clock: null, lastUtcMs: null }).toEqual({ ...without, lastUtcMs: null });
    }),
  );
});
