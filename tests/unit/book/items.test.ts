import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Commit, ItemClosing } from '../../../daemon/book/book.ts';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import { closeItem } from '../../../daemon/watching/close-item.ts';
import { contentsOf } from './contents.ts';
import {
  alarmOf,
  carriedOf,
  dataFolder,
  headOf,
  littleFold,
  ORIGIN_UTC_MS,
  recording,
  SET_ASIDE_UTC_MS,
} from './recording.ts';

const written = (...commits: readonly (readonly Commit[])[]) => {
  const folder = dataFolder();
  const book = new BookFile(folder);
  onTestFinished(() => book.close());
  book.open(SET_ASIDE_UTC_MS);
  for (const commit of commits.flat()) book.commit(commit, SET_ASIDE_UTC_MS);
  return { folder, book, reader: new BookFileReader(folder, littleFold) };
};

/** A session in which the plate was over the limit from its second second on; `cleared` says whether that ended. */
function overLimit(
  id: string,
  over: { cleared?: boolean; ended?: boolean; head?: object; carried?: object } = {},
): Commit[] {
  const { cleared = true, ended = true } = over;
  const head = headOf(id, over.head);
  const raised = {
    seq: 12,
    tMs: 2000,
    finding: { kind: 'alarm', change: 'raised', alarm: alarmOf({ peakC: 191 }) },
  } as const;
  const alarm = alarmOf({ peakC: 199, state: 'returned-unacknowledged' });
  const back = { seq: 20, tMs: 5500, finding: { kind: 'alarm', change: 'cleared', alarm } } as const;
  const isCarried = over.carried !== undefined;
  return [
    {
      session: id,
      begin: head,
      entries: [
        {
          seq: 1,
          tMs: 1000,
          input: { kind: 'carried', carried: carriedOf({ stageId: 'tack', ...over.carried }) },
        },
      ],
      found: [...(isCarried ? [] : [raised]), ...(cleared ? [back] : [])],
      untilSeq: 30,
      untilMs: 6000,
      peakC: 199,
      end: ended ? { why: 'cold', atUtc: '2026-03-01T08:00:06.000+00:00' } : null,
    },
  ];
}
const closing = (over: Partial<ItemClosing> = {}): ItemClosing => ({
  item: 'a-12',
  by: 'A. Tester',
  found: 'No melting, weave even.',
  atUtc: '2026-03-02T08:00:00.000Z',
  commandId: 'c1',
  ...over,
});

describe('items', () => {
  it('are opened by crossings of the fabric limit, with the limit and the stage of then', () => {
    const { reader } = written(overLimit('a'), recording('b', { commits: 1, samplesACommit: 2 }));
    expect(reader.items()).toMatchObject([
      {
        id: 'a-12',
        session: { id: 'a' },
        crossing: { fromMs: 2000, toMs: 5500, peakC: 199, place: 'unknown' },
        limitC: 190,
        stage: 'Tack',
        closing: null,
      },
    ]);
    expect(reader.items()).toEqual(reader.items());
  });

  it('stand newest first, and are looked for again in a session that has grown', () => {
    const { book, reader } = written(
      overLimit('a'),
      overLimit('b', { ended: false, cleared: false, head: { originUtcMs: ORIGIN_UTC_MS + 60_000 } }),
    );
    expect(reader.items().map(({ id, crossing }) => [id, crossing.toMs])).toEqual([
      ['b-12', null],
      ['a-12', 5500],
    ]);
    const alarm = alarmOf({ peakC: 203, state: 'normal' });
    book.commit(
      {
        session: 'b',
        begin: null,
        entries: [],
        found: [{ seq: 44, tMs: 7000, finding: { kind: 'alarm', change: 'cleared', alarm } }],
        untilSeq: 50,
        untilMs: 8000,
        peakC: 203,
        end: null,
      },
      SET_ASIDE_UTC_MS,
    );
    expect(reader.items()[0]).toMatchObject({ id: 'b-12', crossing: { toMs: 7000, peakC: 203 } });
  });

  it('that a break of the program cut in two are one', () => {
    const { reader } = written(
      overLimit('a', { cleared: false }),
      overLimit('b', {
        head: { originUtcMs: ORIGIN_UTC_MS + 10_000, fromSession: 'a', why: 'resumed' },
        carried: { alarms: [alarmOf({ peakC: 195 })], fromSession: 'a', place: 'on-work' },
      }),
    );
    expect(reader.items()).toMatchObject([
      {
        id: 'a-12',
        session: { id: 'a' },
        crossing: { fromMs: 2000, toMs: 15_500, peakC: 199, place: 'on-work' },
      },
    ]);
  });

  it('carried in from a session that has none stand by themselves', () => {
    const { reader } = written(
      overLimit('b', { carried: { alarms: [alarmOf({ peakC: 195 })], fromSession: 'gone' } }),
    );
    expect(reader.items()).toMatchObject([{ id: 'b-1', crossing: { fromMs: 1000, toMs: 5500 } }]);
  });
});

describe('closing an item', () => {
  it('is kept, once, and leaves every row of the sessions as it was', () => {
    const { folder, book, reader } = written(overLimit('a'));
    const before = contentsOf(folder);
    expect(book.closeItem(closing())).toEqual(closing());
    expect(book.closeItem(closing({ by: 'B. Other', commandId: 'c2' }))).toEqual(closing());
    expect(reader.items()[0]?.closing).toEqual(closing());
    expect(contentsOf(folder)).toEqual(before);
  });

  it('is never changed and never taken away', () => {
    const { folder, book } = written(overLimit('a'));
    book.closeItem(closing());
    const db = new BetterSqlite3(`${folder}/book.sqlite`);
    onTestFinished(() => void db.close());
    expect(() => db.exec("UPDATE closing SET json = '{}'")).toThrow('never changed');
    expect(() => db.exec('DELETE FROM closing')).toThrow('never taken away');
  });

  const keeping = (made: ReturnType<typeof written>) => ({
    reader: { items: async () => made.reader.items() },
    book: { closeItem: async (one: ItemClosing) => made.book.closeItem(one) },
    nowUtc: () => closing().atUtc,
  });
  const { by, found, commandId } = closing();

  it('answers a retry as the first time, and refuses anybody else with who it was', async () => {
    const parts = keeping(written(overLimit('a')));
    const first = await closeItem(parts, 'a-12', { by, found, commandId });
    expect(first.closing).toEqual(closing());
    expect(await closeItem(parts, 'a-12', { by, found, commandId })).toEqual(first);
    await expect(
      closeItem(parts, 'a-12', { by: 'B. Other', found: 'x', commandId: 'c2' }),
    ).rejects.toMatchObject({
      because: 'conflict',
      message: expect.stringMatching(/A\. Tester closed it at 2026-03-02T08.*No melting, weave even\./),
    });
    await expect(closeItem(parts, 'a-99', { by, found, commandId })).rejects.toMatchObject({
      because: 'unknown',
    });
  });

  it('of two at the same time keeps one and refuses the other', async () => {
    const parts = keeping(written(overLimit('a')));
    const both = await Promise.allSettled([
      closeItem(parts, 'a-12', { by: 'A', found: 'x', commandId: 'c1' }),
      closeItem(parts, 'a-12', { by: 'B', found: 'y', commandId: 'c2' }),
    ]);
    expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
  });

  it('is refused while the plate is still over; a session that broke off can be closed', async () => {
    const runs = keeping(written(overLimit('a', { cleared: false, ended: false })));
    await expect(closeItem(runs, 'a-12', { by, found, commandId })).rejects.toThrow('still over the limit');
    const broke = keeping(written(overLimit('a', { cleared: false })));
    expect((await closeItem(broke, 'a-12', { by, found, commandId })).closing).toEqual(closing());
  });
});
