import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Commit } from '../../../daemon/book/book.ts';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import type { Visit } from '../../../shared/heat/work/visit.ts';
import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import { at } from '../watch/support/places.ts';
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

const opened = (folder = dataFolder()) => {
  const book = new BookFile(folder);
  onTestFinished(() => book.close());
  book.open(SET_ASIDE_UTC_MS);
  return { folder, book, reader: new BookFileReader(folder, littleFold) };
};

const visit = (n: number, toMs: number, more: Partial<Visit> = {}): Visit => ({
  n,
  fromMs: 1000 * n,
  toMs,
  spot: { piece: 'flap', version: 1, side: 1, area: 'end' },
  placeName: 'Demo flap, Upper, end',
  presumed: false,
  contactBy: 'marks',
  contactMs: toMs - 1000 * n,
  peakC: 121,
  guardBandK: 3,
  fabricC: 120,
  reached: null,
  inBandMs: 0,
  lapDone: false,
  takenBack: false,
  ...more,
});

const withVisits = (id: string, visits: readonly Visit[]): Commit[] => [
  {
    session: id,
    begin: headOf(id),
    entries: [{ seq: 1, tMs: 1000, input: { kind: 'carried', carried: carriedOf() } }],
    found: visits.map((one, i) => ({ seq: 10 + i, tMs: one.toMs, finding: { kind: 'visit', visit: one } })),
    untilSeq: 60,
    untilMs: 60_000,
    peakC: 121,
    end: { why: 'cold', atUtc: '2026-03-01T08:01:00.000+00:00' },
  },
];

const note = (more: Partial<PieceNote> = {}): PieceNote => ({
  commandId: 'c1',
  piece: 'flap',
  atUtcMs: ORIGIN_UTC_MS + 5000,
  note: { kind: 'tight', side: 1, by: 'A. Tester' },
  ...more,
});

/** What a bad disk does to a row: its text is no JSON any more. */
function breakText(file: string, text: string): void {
  const bytes = readFileSync(file);
  const at = bytes.indexOf(text);
  expect([at > 0, bytes.indexOf(text, at + 1)]).toEqual([true, -1]);
  bytes.write('#', at);
  writeFileSync(file, bytes);
}

describe('what all sessions did to the pieces', () => {
  it('is each visit as it was told last, with its session and UTC', () => {
    const { book, reader } = opened();
    const all = [
      ...withVisits('a', [visit(1, 11_000), visit(2, 15_000), visit(1, 21_000)]),
      ...withVisits('b', [visit(1, 9000, { takenBack: true })]),
    ];
    for (const commit of all) book.commit(commit, SET_ASIDE_UTC_MS);
    const { visits } = reader.shop();
    expect(visits.map((v) => [v.session, v.n, v.toUtcMs - ORIGIN_UTC_MS, v.takenBack])).toEqual([
      ['a', 1, 21_000, false],
      ['a', 2, 15_000, false],
      ['b', 1, 9000, true],
    ]);
    expect(visits[0]).toMatchObject({ ironId: headOf('a').ironId, simulated: headOf('a').simulated });
  });

  it('is found by an index, without reading what else was found', () => {
    const { folder } = opened();
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void db.close());
    const plan = db
      .prepare(
        "EXPLAIN QUERY PLAN SELECT json FROM finding f WHERE f.kind = 'visit' ORDER BY f.link, f.place",
      )
      .all()
      .map((row) => (row as { detail: string }).detail);
    expect(plan.join(' ')).toContain('finding_visit');
  });

  it('is nothing where there is no book', () => {
    expect(new BookFileReader(dataFolder(), littleFold).shop()).toEqual({
      visits: [],
      notes: [],
      entries: [],
      unreadable: 0,
    });
  });
});

describe('what named persons say of pieces', () => {
  it('is kept in its order, once a command, and leaves every row of the sessions as it was', () => {
    const { folder, book, reader } = opened();
    for (const commit of recording('a')) book.commit(commit, SET_ASIDE_UTC_MS);
    const before = contentsOf(folder);
    const second = note({ commandId: 'c2', note: { kind: 'overruled', by: 'B. Other', why: 'a patch' } });
    expect(book.addNote(note())).toEqual(note());
    expect(book.addNote(second)).toEqual(second);
    expect(book.addNote(note({ atUtcMs: 0 }))).toEqual(note());
    expect(reader.shop().notes).toEqual([note(), second]);
    expect(contentsOf(folder)).toEqual(before);
  });

  it('is never changed and never taken away', () => {
    const { folder, book } = opened();
    book.addNote(note());
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void db.close());
    expect(() => db.exec("UPDATE note SET json = '{}'")).toThrow('never changed');
    expect(() => db.exec('DELETE FROM note')).toThrow('never taken away');
  });
});

describe('a book of version 2', () => {
  const older = (): string => {
    const folder = dataFolder();
    copyFileSync(
      fileURLToPath(new URL('../../fixtures/book-v2.sqlite', import.meta.url)),
      join(folder, 'book.sqlite'),
    );
    return folder;
  };

  it('is read as it stands: it has no notes', () => {
    const reader = new BookFileReader(older(), littleFold);
    expect(reader.sessions().map((s) => s.id)).toEqual(['broken', 'ended']);
    expect(reader.shop()).toEqual({ visits: [], notes: [], entries: [], unreadable: 0 });
  });

  it('takes notes once it has been brought up to date, and its seals stay', () => {
    const folder = older();
    const before = new BookFileReader(folder, littleFold).session('ended')?.seal;
    const { book, reader } = opened(folder);
    book.addNote(note());
    expect(reader.shop().notes).toEqual([note()]);
    expect(reader.session('ended')?.seal).toBe(before);
  });
});

describe('what happens in the shop', () => {
  const entry = (commandId: string, happened: ShopEntry['happened']): ShopEntry => ({
    commandId,
    atUtcMs: 1_772_000_000_000,
    zone: 'Etc/UTC',
    simulated: false,
    happened,
  });
  const air = (n: number, simulated = false): ShopEntry => ({
    ...entry(`air ${n}`, { kind: 'air', airC: 20 + (n % 10), rhPct: 50, how: 'probe', probe: 'board/air' }),
    simulated,
  });
  const ended = entry('e', { kind: 'ended', coat: 'coat', why: 'done' });

  it('is kept in its order, once a command, and never changed', () => {
    const { folder, book, reader } = opened();
    expect(book.addShopEntry(air(1))).toEqual(air(1));
    expect(book.addShopEntry(ended)).toEqual(ended);
    expect(book.addShopEntry({ ...ended, atUtcMs: 0 })).toEqual(ended);
    expect(reader.shop().entries).toEqual([air(1), ended]);
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void db.close());
    expect(() => db.exec("UPDATE shop SET json = '{}'")).toThrow('never changed');
    expect(() => db.exec('DELETE FROM shop')).toThrow('never taken away');
  });

  it('is read back whole but for air of long ago', () => {
    const { folder, book, reader } = opened();
    book.addShopEntry(ended);
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void db.close());
    const insert = db.prepare('INSERT INTO shop (json) VALUES (?)');
    db.transaction(() => {
      for (let n = 1; n <= 10_005; n += 1) insert.run(JSON.stringify(air(n)));
    })();
    const { entries } = reader.shop();
    expect(entries).toHaveLength(10_001);
    expect([entries[0], entries[1], entries.at(-1)]).toEqual([ended, air(6), air(10_005)]);
  });

  it('keeps its real air, however much was simulated since', () => {
    const { folder, book, reader } = opened();
    book.addShopEntry(air(1));
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void db.close());
    const insert = db.prepare('INSERT INTO shop (json) VALUES (?)');
    db.transaction(() => {
      for (let n = 2; n <= 10_003; n += 1) insert.run(JSON.stringify(air(n, true)));
    })();
    const { entries } = reader.shop();
    expect(entries).toHaveLength(10_001);
    expect([entries[0], entries[1]]).toEqual([air(1), air(4, true)]);
  });

  it('is read but for rows that are no entry, and how many those are is told', () => {
    const { folder, book, reader } = opened();
    book.addShopEntry(air(1));
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    const insert = db.prepare('INSERT INTO shop (json) VALUES (?)');
    insert.run(JSON.stringify({ ...air(2), happened: { ...air(2).happened, rhPct: 'wet' } }));
    insert.run(JSON.stringify({ commandId: 'later', happened: { kind: 'of-a-later-program' } }));
    insert.run(JSON.stringify({ ...air(3), commandId: 'to-break' }));
    db.close();
    book.addShopEntry(ended);
    book.close();
    breakText(join(folder, 'book.sqlite'), '{"commandId":"to-break"');
    expect(reader.shop()).toEqual({ visits: [], notes: [], entries: [air(1), ended], unreadable: 3 });
  });

  it('comes to a book of version 3 once that is brought up to date; its notes and seals stay', () => {
    const folder = dataFolder();
    copyFileSync(
      fileURLToPath(new URL('../../fixtures/book-v3.sqlite', import.meta.url)),
      join(folder, 'book.sqlite'),
    );
    const asItStands = new BookFileReader(folder, littleFold);
    const before = asItStands.session('ended')?.seal;
    expect(asItStands.shop()).toMatchObject({ notes: [{ commandId: 'tight' }], entries: [] });
    const { book, reader } = opened(folder);
    book.addShopEntry(ended);
    expect(reader.shop()).toMatchObject({ notes: [{ commandId: 'tight' }], entries: [ended] });
    expect(reader.session('ended')?.seal).toBe(before);
  });
});

describe('an area suspect on a piece', () => {
  const alarms = (kind: 'over-limit' | 'over-cement-limit'): Commit[] => {
    const alarm = alarmOf({ kind, peakC: 151 });
    const mark = { kind: 'at', said: 'area', at: at('edge', { bonded: true }) } as const;
    return [
      {
        session: 'a',
        begin: headOf('a'),
        entries: [
          { seq: 1, tMs: 1000, input: { kind: 'carried', carried: carriedOf({ place: 'on-rest' }) } },
          { seq: 2, tMs: 1500, input: { kind: 'mark', commandId: 'm', mark } },
        ],
        found: [
          { seq: 12, tMs: 2000, finding: { kind: 'alarm', change: 'raised', alarm } },
          { seq: 20, tMs: 5000, finding: { kind: 'alarm', change: 'cleared', alarm } },
        ],
        untilSeq: 30,
        untilMs: 6000,
        peakC: 151,
        end: { why: 'cold', atUtc: '2026-03-01T08:00:06.000+00:00' },
      },
    ];
  };

  it.each([
    ['over-limit', 'fabric', 'a-12'],
    ['over-cement-limit', 'cement', 'a-c12'],
  ] as const)('by %s names the place that was marked, and the limit', (kind, limit, id) => {
    const { book, reader } = opened();
    for (const commit of alarms(kind)) book.commit(commit, SET_ASIDE_UTC_MS);
    expect(reader.items()).toMatchObject([
      { id, crossing: { limit, place: 'on-work', at: { piece: 'flap', area: 'edge' }, peakC: 151 } },
    ]);
  });
});
