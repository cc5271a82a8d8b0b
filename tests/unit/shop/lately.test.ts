import { describe, expect, it } from 'vitest';
import { foldDrying, nothingDries } from '../../../shared/shop/drying.ts';
import type { ShopHappened } from '../../../shared/shop/entry.ts';
import { endedLately, startedLately } from '../../../shared/shop/lately.ts';

const START_MS = 1_772_000_000_000;
const MINUTE_MS = 60_000;

type Said = readonly [atMin: number, commandId: string, happened: ShopHappened];

const after = (...said: readonly Said[]) =>
  said.reduce(
    (drying, [atMin, commandId, happened]) =>
      foldDrying(drying, {
        commandId,
        atUtcMs: START_MS + atMin * MINUTE_MS,
        zone: 'Etc/UTC',
        simulated: false,
        happened,
      }),
    nothingDries,
  );

/** Put on an hour before it was said. */
const put = (atMin: number, by: string, ...coats: readonly string[]): Said => [
  atMin,
  by,
  {
    kind: 'coats',
    cement: 'c',
    cementVersion: 1,
    piece: 'flap',
    pieceVersion: 1,
    places: coats.map((coat) => ({ coat, side: 1, area: coat })),
    fromUtcMs: START_MS + (atMin - 60) * MINUTE_MS,
  },
];
const touched = (coat: string): ShopHappened => ({
  kind: 'checked',
  coat,
  stage: 'cured',
  found: 'tacky',
  curedS: 1,
});
const ended = (coat: string, why: 'done' | 'mistake' = 'done'): ShopHappened => ({
  kind: 'ended',
  coat,
  why,
});
/** The machine's clock was set on by an hour. */
const clock: ShopHappened = {
  kind: 'clock',
  byMs: 60 * MINUTE_MS,
  while: 'running',
  startUtcMs: null,
  earlierByMs: 60 * MINUTE_MS,
};

const starts = (atMin: number, ...said: readonly Said[]) =>
  startedLately(after(...said), START_MS + atMin * MINUTE_MS).map(({ by, coats }) => [
    by,
    ...coats.map(({ id }) => id),
  ]);
const ends = (atMin: number, ...said: readonly Said[]) =>
  endedLately(after(...said), START_MS + atMin * MINUTE_MS).map(({ id, ended: { by } }) => [id, by]);

describe('starts that can be taken back', () => {
  it('are those of the last ten minutes, by when they were said, the newest first', () => {
    const said = [put(0, 'one', 'a', 'b'), put(4, 'two', 'c')];
    expect(starts(5, ...said)).toEqual([
      ['two', 'c'],
      ['one', 'a', 'b'],
    ]);
    expect(starts(9.99, ...said)).toHaveLength(2);
    expect(starts(10, ...said)).toEqual([['two', 'c']]);
    expect(starts(14, ...said)).toEqual([]);
  });

  it('are none of whose coats one was touched or ended, until that is taken back', () => {
    const said = [put(0, 'one', 'a', 'b')];
    expect(starts(2, ...said, [1, 'tap', touched('b')])).toEqual([]);
    expect(starts(2, ...said, [1, 'end', ended('a', 'mistake')])).toEqual([]);
    expect(
      starts(3, ...said, [1, 'tap', touched('b')], [2, 'back', { kind: 'taken-back', of: 'tap' }]),
    ).toEqual([['one', 'a', 'b']]);
  });

  it('stay so for as long where the machine’s clock is set', () => {
    expect(starts(62, put(0, 'one', 'a'), [61, 'set', clock])).toEqual([['one', 'a']]);
    expect(starts(70, put(0, 'one', 'a'), [61, 'set', clock])).toEqual([]);
  });
});

describe('coats that were ended', () => {
  const said = [put(0, 'one', 'a', 'b', 'c'), [5, 'x', ended('c')], [7, 'y', ended('a', 'mistake')]] as const;

  it('are those of the last hour, the newest first', () => {
    expect(ends(7, ...said)).toEqual([
      ['a', 'y'],
      ['c', 'x'],
    ]);
    expect(ends(65, ...said)).toEqual([['a', 'y']]);
    expect(ends(67, ...said)).toEqual([]);
  });

  it('are none where that was taken back', () =>
    expect(ends(8, ...said, [8, 'back', { kind: 'taken-back', of: 'x' }])).toEqual([['a', 'y']]));

  it('stay so for as long where the machine’s clock is set', () => {
    expect(ends(70, ...said, [69, 'set', clock])).toHaveLength(2);
    expect(ends(127, ...said, [69, 'set', clock])).toEqual([]);
  });
});
