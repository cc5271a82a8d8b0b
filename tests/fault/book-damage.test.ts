import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { BookFailure, type Commit, type Verification } from '../../daemon/book/book.ts';
import { BookFileReader } from '../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../daemon/book/store/book-file.ts';
import { contentsOf, tamper } from '../unit/book/contents.ts';
import { dataFolder, littleFold, recording, SET_ASIDE_UTC_MS } from '../unit/book/recording.ts';
import { toEnd } from '../unit/book/stores.ts';

/** Changes behind the program's back, and damage: what verification says, and what the next start does. */

const COMMITS = 6;

function bookWith(...sessions: string[]): string {
  const folder = dataFolder();
  const book = new BookFile(folder);
  book.open(SET_ASIDE_UTC_MS);
  for (const id of sessions)
    for (const commit of recording(id, { commits: COMMITS })) book.commit(commit, SET_ASIDE_UTC_MS);
  book.close();
  return folder;
}

const readerOf = (folder: string) => new BookFileReader(folder, littleFold);
const verify = (folder: string, id = 'a'): Verification => toEnd(readerOf(folder).verify(id));

/** Lehmer's generator: the same places in each run. */
function places(seed: number, below: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

describe('verification', () => {
  it('names the commit in which any byte of a block or a link was changed', () => {
    const folder = bookWith('a');
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    for (const column of ['block', 'sha256']) {
      const read = db.prepare<[number], Buffer>(`SELECT ${column} FROM link WHERE idx = ?`).pluck();
      const write = db.prepare(`UPDATE link SET ${column} = ? WHERE idx = ?`);
      const right = read.get(3) ?? Buffer.alloc(0);
      expect(right.length).toBeGreaterThan(30);
      for (let at = 0; at < right.length; at++) {
        const wrong = Buffer.from(right);
        wrong[at] = (wrong[at] ?? 0) ^ (1 << (at % 8));
        write.run(wrong, 3);
        const { firstBadCommit, differences } = verify(folder);
        expect(firstBadCommit, `${column}, byte ${at}`).toEqual({
          index: 3,
          fromMs: 4000,
          toMs: 5000,
          what: 'its content does not match its link',
        });
        expect(differences).toEqual([]);
      }
      write.run(right, 3);
    }
    db.close();
    expect(verify(folder).firstBadCommit).toBeNull();
  });

  const link2 = '(SELECT n FROM link WHERE idx = 2)';
  it.each<[string, string, number]>([
    ['the place of a commit', `UPDATE link SET idx = 70 WHERE idx = 2`, 2],
    ['how far a commit reached', `UPDATE link SET until_seq = until_seq + 1 WHERE idx = 2`, 2],
    ['how long a commit lasted', `UPDATE link SET until_ms = until_ms + 1 WHERE idx = 2`, 2],
    ['a peak', `UPDATE link SET peak_c = peak_c + 0.01 WHERE idx = 2`, 2],
    ['a count of samples', `UPDATE link SET samples = samples + 1 WHERE idx = 2`, 2],
    ['a count of findings', `UPDATE link SET findings = findings + 1 WHERE idx = 2`, 2],
    [
      'an ending',
      `UPDATE link SET ending = '{"why":"by-hand","atUtc":""}' WHERE idx = ${COMMITS - 1}`,
      COMMITS - 1,
    ],
    ['an ending where there was none', `UPDATE link SET ending = '{}' WHERE idx = 2`, 2],
    ['the head', `UPDATE session SET head = replace(head, 'Big iron', 'Big Iron')`, 0],
    ['an input', `UPDATE input SET json = replace(json, 'lap 2', 'lap 3') WHERE link = ${link2}`, 2],
    ['the time of an input', `UPDATE input SET t_ms = t_ms + 1 WHERE link = ${link2}`, 2],
    ['the number of an input', `UPDATE input SET seq = seq + 1 WHERE link = ${link2}`, 2],
    ['the commit of an input', `UPDATE input SET link = 4 WHERE link = ${link2}`, 2],
    ['no input any more', `DELETE FROM input WHERE link = ${link2}`, 2],
    ['an input that never was', `INSERT INTO input VALUES (${link2}, 1, 1, '{"kind":"time"}')`, 2],
    ['a finding', `UPDATE finding SET json = replace(json, '0', '1') WHERE link = ${link2} AND place = 0`, 2],
    ['no finding any more', `DELETE FROM finding WHERE link = ${link2} AND place = 0`, 2],
    ['the order of findings', `UPDATE finding SET place = 99 WHERE link = ${link2} AND place = 0`, 2],
    ['the number of a finding', `UPDATE finding SET seq = seq + 1 WHERE link = ${link2} AND place = 0`, 2],
  ])('names the commit where somebody wrote %s', (_, sql, index) => {
    const folder = bookWith('a');
    tamper(folder, sql);
    const found = verify(folder);
    expect(found.firstBadCommit?.index).toBe(index);
    expect(found.firstBadCommit?.fromMs).toBe(1000 + index * 1000);
    expect(found.differences).toEqual([]);
    expect(() => [...readerOf(folder).readingsCsv('a')]).toThrow(`past commit ${index}`);
  });

  it('names a commit that was taken out, and one that was swapped between sessions', () => {
    const folder = bookWith('a', 'b');
    const db = new BetterSqlite3(join(folder, 'book.sqlite'));
    db.exec(`
      PRAGMA foreign_keys = OFF;
      UPDATE link SET session = 3 WHERE session = 1 AND idx = 4;
      UPDATE link SET session = 1 WHERE session = 2 AND idx = 4;
      UPDATE link SET session = 2 WHERE session = 3;
      DELETE FROM link WHERE session = 1 AND idx = 1;
    `);
    db.close();
    expect(verify(folder, 'a').firstBadCommit).toMatchObject({ index: 1, what: 'it is missing' });
    expect(verify(folder, 'b').firstBadCommit).toMatchObject({ index: 4 });
  });

  it('holds for a session even if its links were made anew from another start', () => {
    const folder = bookWith('a');
    const seal = readerOf(folder).session('a')?.seal;
    const other = dataFolder();
    const book = new BookFile(other);
    book.open(SET_ASIDE_UTC_MS);
    for (const commit of recording('a', { commits: COMMITS, head: { ironName: 'another' } }))
      book.commit(commit, SET_ASIDE_UTC_MS);
    book.close();
    expect(verify(other).firstBadCommit).toBeNull();
    expect(readerOf(other).session('a')?.seal).not.toBe(seal);
  });
});

describe('a book with damaged bytes', () => {
  it('is refused, set aside or found bad by verification, or it gives what it gave before', () => {
    const folder = bookWith('b', 'a');
    const file = join(folder, 'book.sqlite');
    const right = readFileSync(file);
    const before = [readerOf(folder).findings('a'), [...readerOf(folder).readingsCsv('a')], verify(folder)];
    const place = places(1, right.length);
    const outcomes = { same: 0, refused: 0, named: 0 };
    for (let round = 0; round < 300; round++) {
      const wrong = Buffer.from(right);
      for (let i = 0; i <= round % 3; i++) {
        const at = place();
        wrong[at] = (wrong[at] ?? 0) ^ (1 + (place() % 255));
      }
      writeFileSync(file, wrong);
      try {
        const found = verify(folder);
        const lost = readerOf(folder).session('a')?.endWhy !== 'cold';
        if (found.firstBadCommit !== null || lost) {
          outcomes.named++;
          continue;
        }
        const again = [readerOf(folder).findings('a'), [...readerOf(folder).readingsCsv('a')], found];
        expect(again, `round ${round}`).toEqual(before);
        outcomes.same++;
      } catch (error) {
        if (!(error instanceof BookFailure)) throw error;
        outcomes.refused++;
      }
    }
    expect(outcomes.refused + outcomes.named).toBeGreaterThan(50);
    expect(outcomes.same).toBeGreaterThan(50);
  }, 120_000);

  it('is opened or set aside by the next start, never deleted, and keeping goes on', () => {
    const original = bookWith('a');
    const right = readFileSync(join(original, 'book.sqlite'));
    const place = places(2, right.length);
    let setAside = 0;
    for (let round = 0; round < 60; round++) {
      const folder = dataFolder();
      const file = join(folder, 'book.sqlite');
      const wrong = Buffer.from(right);
      if (round % 2 === 0) for (let i = 0; i < 64; i++) wrong[place()] = place() % 256;
      writeFileSync(file, wrong);
      if (round % 2 === 1) truncateSync(file, place());
      const damaged = readFileSync(file);
      const book = new BookFile(folder);
      const opened = book.open(SET_ASIDE_UTC_MS);
      if (opened.setAside !== null) {
        setAside++;
        expect(opened.setAside).toBe(join(folder, 'book-damaged-2026-03-01T10-11-12Z.sqlite'));
        expect(readFileSync(opened.setAside).length).toBe(damaged.length);
      }
      for (const commit of recording('new')) book.commit(commit, SET_ASIDE_UTC_MS);
      book.close();
      expect(verify(folder, 'new')).toMatchObject({ firstBadCommit: null, differences: [] });
    }
    expect(setAside).toBeGreaterThan(30);
  });

  it('that is found out while writing is set aside, and the next session is kept in a new one', () => {
    const folder = dataFolder();
    const file = join(folder, 'book.sqlite');
    const book = new BookFile(folder);
    book.open(SET_ASIDE_UTC_MS);
    const [first, second] = recording('a', { ended: false }) as [Commit, Commit];
    book.commit(first, SET_ASIDE_UTC_MS);
    book.close();
    const size = readFileSync(file).length;
    book.open(SET_ASIDE_UTC_MS);
    const [begun, ...rest] = recording('b') as [Commit, ...Commit[]];
    book.commit(begun, SET_ASIDE_UTC_MS);
    // The log is copied into the book first: otherwise it would hide what is written over here.
    const other = new BetterSqlite3(file);
    other.pragma('wal_checkpoint(TRUNCATE)');
    other.close();
    writeFileSync(
      file,
      Buffer.concat([readFileSync(file).subarray(0, 4096), Buffer.alloc(size - 4096, 0x55)]),
    );
    const failures: BookFailure[] = [];
    for (const commit of rest) {
      try {
        book.commit(commit, SET_ASIDE_UTC_MS);
      } catch (error) {
        failures.push(error as BookFailure);
      }
    }
    expect(failures.map((f) => f.failure)).toEqual([
      'damaged',
      'session-broken',
      'session-broken',
      'session-broken',
    ]);
    expect(failures[0]?.message).toContain('book-damaged-2026-03-01T10-11-12Z.sqlite');
    for (const commit of recording('c')) book.commit(commit, SET_ASIDE_UTC_MS);
    expect(() => book.commit(second, SET_ASIDE_UTC_MS)).toThrow(BookFailure);
    book.close();
    expect(readdirSync(folder)).toContain('book-damaged-2026-03-01T10-11-12Z.sqlite');
    expect(verify(folder, 'c')).toMatchObject({ firstBadCommit: null });
  });

  it('twice within a second gets two names', () => {
    const folder = dataFolder();
    for (let i = 0; i < 2; i++) {
      writeFileSync(join(folder, 'book.sqlite'), 'no book, but long enough to be one');
      const book = new BookFile(folder);
      expect(book.open(SET_ASIDE_UTC_MS).setAside).not.toBeNull();
      book.close();
    }
    expect(readdirSync(folder).toSorted()).toEqual([
      'book-damaged-2026-03-01T10-11-12Z-2.sqlite',
      'book-damaged-2026-03-01T10-11-12Z.sqlite',
      'book.sqlite',
    ]);
  });

  it('of another program is set aside too', () => {
    const folder = dataFolder();
    const other = new BetterSqlite3(join(folder, 'book.sqlite'));
    other.exec('CREATE TABLE session (n INTEGER); PRAGMA user_version = 1');
    other.close();
    const book = new BookFile(folder);
    expect(book.open(SET_ASIDE_UTC_MS).setAside).not.toBeNull();
    book.close();
    expect(contentsOf(folder)['link']).toEqual([]);
  });

  it('with a log but no file keeps the log', () => {
    const folder = dataFolder();
    writeFileSync(join(folder, 'book.sqlite-wal'), Buffer.from('377f0682', 'hex'));
    const book = new BookFile(folder);
    book.open(SET_ASIDE_UTC_MS);
    book.close();
    expect(readdirSync(folder)).toContain('book-damaged-2026-03-01T10-11-12Z.sqlite-wal');
  });
});
