import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import { APPLICATION_ID, BOOK_VERSION, migrate, versionOf } from '../../../daemon/book/store/migrations.ts';
import { dataFolder, foundOf, littleFold, recording, SET_ASIDE_UTC_MS } from './recording.ts';
import { toEnd } from './stores.ts';

/** The last links of the fixture's sessions, as they were when it was written. */
const SEALS_V1 = {
  ended: '8ce2ec75b37e0a9ebee9cf94a31564e01abc0de7f5f1046fdc346f84ab92d888',
  broken: '2a7a7f910309fd55707816660adfcb23e45a5b19ab104b31d53efceb23552928',
};

const fixture = (version: number): string =>
  fileURLToPath(new URL(`../../fixtures/book-v${version}.sqlite`, import.meta.url));

const emptyDatabase = () => {
  const db = new BetterSqlite3(':memory:');
  onTestFinished(() => void db.close());
  return db;
};
const tablesOf = (db: BetterSqlite3.Database): unknown[] =>
  db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").pluck().all();

describe('migrations', () => {
  it('bring an empty file to this version, and do nothing the second time', () => {
    const db = emptyDatabase();
    migrate(db);
    expect(versionOf(db)).toBe(BOOK_VERSION);
    expect(db.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    const before = db.serialize();
    migrate(db);
    expect(db.serialize()).toEqual(before);
  });

  it('run from wherever the book stands', () => {
    const db = emptyDatabase();
    const steps = ['CREATE TABLE a (x)', 'CREATE TABLE b (x)', 'CREATE TABLE c (x)'];
    migrate(db, steps.slice(0, 1));
    expect(versionOf(db)).toBe(1);
    migrate(db, steps);
    expect([versionOf(db), tablesOf(db)]).toEqual([3, ['a', 'b', 'c']]);
  });

  it('that fail leave the version before them, whole', () => {
    const db = emptyDatabase();
    const steps = ['CREATE TABLE a (x)', 'CREATE TABLE b (x); INSERT INTO nowhere VALUES (1)'];
    expect(() => migrate(db, steps)).toThrow('nowhere');
    expect([versionOf(db), tablesOf(db)]).toEqual([1, ['a']]);
  });
});

const opened = () => {
  const folder = dataFolder();
  copyFileSync(fixture(1), join(folder, 'book.sqlite'));
  const book = new BookFile(folder);
  onTestFinished(() => book.close());
  const reader = new BookFileReader(folder, littleFold);
  const before = { ended: reader.session('ended')?.seal, broken: reader.session('broken')?.seal };
  return { book, reader, before, told: book.open(SET_ASIDE_UTC_MS) };
};

describe('a book of version 1', () => {
  it('is read, and its chains hold', () => {
    const { reader, before, told } = opened();
    expect(before).toEqual(SEALS_V1);
    expect(told).toMatchObject({ setAside: null, interrupted: [{ id: 'broken' }], notKept: null });
    for (const id of ['ended', 'broken'])
      expect(toEnd(reader.verify(id))).toMatchObject({ firstBadCommit: null, differences: [] });
    expect(reader.findings('ended')).toEqual(foundOf(recording('ended', { commits: 3 })));
  });

  it('is read as it stands, where nobody has brought it up to date', () => {
    const folder = dataFolder();
    copyFileSync(fixture(1), join(folder, 'book.sqlite'));
    const reader = new BookFileReader(folder, littleFold);
    expect(reader.sessions().map((s) => s.id)).toEqual(['broken', 'ended']);
    const items = reader.items();
    expect(items.length).toBeGreaterThan(0);
    expect(items.every((item) => item.closing === null)).toBe(true);
  });

  it('takes closings once it has been brought up to date, and its seals stay', () => {
    const { book, reader, before } = opened();
    const [item] = reader.items();
    if (item === undefined) throw new Error('no item');
    const closing = {
      item: item.id,
      by: 'A. Tester',
      found: 'sound',
      atUtc: '2026-03-02T08:00:00Z',
      commandId: 'c',
    };
    expect(book.closeItem(closing)).toEqual(closing);
    expect(reader.items()[0]?.closing).toEqual(closing);
    expect(reader.session('ended')?.seal).toBe(before.ended);
  });

  it('is written on', () => {
    const { book, reader } = opened();
    for (const commit of recording('next')) book.commit(commit, SET_ASIDE_UTC_MS);
    expect(reader.sessions().map((s) => s.id)).toEqual(['next', 'broken', 'ended']);
  });
});
