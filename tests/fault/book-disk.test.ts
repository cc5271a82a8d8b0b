import { chmodSync, renameSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { BookFailure, type Commit } from '../../daemon/book/book.ts';
import { BookFileReader } from '../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../daemon/book/store/book-file.ts';
import { type Connect, connectFile } from '../../daemon/book/store/connect.ts';
import { contentsOf } from '../unit/book/contents.ts';
import { dataFolder, littleFold, recording, SET_ASIDE_UTC_MS } from '../unit/book/recording.ts';
import { canMount, smallDisk } from '../unit/book/small-disk.ts';
import { toEnd } from '../unit/book/stores.ts';

/** Real trouble with the disk: each is named with what to do, keeps nothing of the commit, and passes. */

const commits = recording('a', { commits: 40 });
const [first, second, third] = commits as [Commit, Commit, Commit];

function bookIn(folder: string, connect?: Connect) {
  const file = new BookFile(folder, connect);
  onTestFinished(() => file.close());
  return {
    open: () => file.open(SET_ASIDE_UTC_MS),
    commit: (commit: Commit) => file.commit(commit, SET_ASIDE_UTC_MS),
    close: () => file.close(),
  };
}

function failureOf(work: () => unknown): BookFailure {
  try {
    work();
  } catch (error) {
    if (error instanceof BookFailure) return error;
    throw error;
  }
  throw new Error('it did not fail');
}

const verified = (folder: string, id = 'a') => toEnd(new BookFileReader(folder, littleFold).verify(id));

const queryOnly: Connect = (file, options) => {
  const db = connectFile(file, options);
  db.pragma('query_only = ON');
  return db;
};

describe('a full disk', () => {
  it('as SQLite sees it: keeping goes on in the same session when there is room again', () => {
    const folder = dataFolder();
    let connected: Database | null = null;
    const book = bookIn(folder, (file, options) => (connected = connectFile(file, options)));
    const allowPages = (count: number) => connected?.pragma(`max_page_count = ${count}`);
    book.open();
    const [small, large] = recording('a', { commits: 2, samplesACommit: 4000 }) as [Commit, Commit];
    book.commit(small);
    const before = contentsOf(folder);
    // No fewer than there are: the book may not grow.
    allowPages(1);
    const failure = failureOf(() => book.commit(large));
    expect(failure.failure).toBe('disk-full');
    expect(failure.message).toContain(`Free some space on the disk of ${folder}`);
    expect(contentsOf(folder)).toEqual(before);
    allowPages(1000);
    book.commit(large);
    expect(verified(folder)).toMatchObject({ firstBadCommit: null, differences: [], samples: 8000 });
  });

  it.runIf(canMount)(
    'a real one: nothing of the commit is kept, and keeping goes on when there is room',
    () => {
      const { folder } = smallDisk(4_000_000);
      const book = bookIn(folder);
      book.open();
      book.commit(first);
      const filler = join(folder, 'filler');
      const { bavail, bsize } = statfsSync(folder);
      writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - 60_000)));
      let kept = 1;
      const failure = failureOf(() => {
        for (const commit of commits.slice(1)) {
          book.commit(commit);
          kept++;
        }
      });
      expect(failure.failure).toBe('disk-full');
      expect(contentsOf(folder)['link']).toHaveLength(kept);
      expect(failureOf(() => book.commit(commits[kept] as Commit)).failure).toBe('disk-full');
      expect(verified(folder)).toMatchObject({ firstBadCommit: null, differences: [] });
      rmSync(filler);
      for (const commit of commits.slice(kept)) book.commit(commit);
      expect(verified(folder)).toMatchObject({ firstBadCommit: null, differences: [], samples: 800 });
    },
  );

  it.runIf(canMount)('at the start: it says so, and begins the book when there is room', () => {
    const { folder } = smallDisk(409_600);
    const filler = join(folder, 'filler');
    writeFileSync(filler, Buffer.alloc(409_600));
    const book = bookIn(folder);
    expect(failureOf(() => book.open()).failure).toBe('disk-full');
    rmSync(filler);
    expect(book.open().setAside).toBeNull();
  });

  it.runIf(canMount)(
    'at a start after a break: what was interrupted is told, and ended when there is room',
    () => {
      const { folder } = smallDisk(400_000);
      const broken = bookIn(folder);
      broken.open();
      broken.commit(first);
      const filler = join(folder, 'filler');
      const { bavail, bsize } = statfsSync(folder);
      writeFileSync(filler, Buffer.alloc(bavail * bsize));
      const book = bookIn(folder);
      const opened = book.open();
      expect(opened.interrupted.map((s) => s.id)).toEqual(['a']);
      expect(opened.notKept?.failure).toBe('disk-full');
      rmSync(filler);
      const [next] = recording('b') as [Commit];
      book.commit(next);
      const reader = new BookFileReader(folder, littleFold);
      expect(reader.session('a')?.endWhy).toBe('interrupted');
      expect(reader.sessions().map((s) => s.id)).toEqual(['b', 'a']);
    },
  );
});

describe('a disk that can only be read', () => {
  it.runIf(canMount)('is named with what to do, and keeping goes on once it can be written', () => {
    const disk = smallDisk(400_000);
    const before = bookIn(disk.folder);
    before.open();
    before.commit(first);
    before.close();
    disk.remount('ro');
    expect(() => new BookFileReader(disk.folder, littleFold).sessions()).toThrow(/copy the book to a folder/);
    const book = bookIn(disk.folder);
    const failure = failureOf(() => book.open());
    expect(failure.failure).toBe('read-only');
    expect(failure.message).toContain('--data');
    expect(failureOf(() => book.commit(second)).failure).toBe('read-only');
    disk.remount('rw');
    book.commit(second);
    expect(verified(disk.folder)).toMatchObject({ firstBadCommit: null, samples: 40 });
  });

  it.runIf(canMount)('in which there is no book yet', () => {
    const disk = smallDisk(65_536);
    disk.remount('ro');
    expect(failureOf(() => bookIn(disk.folder).open()).failure).toBe('read-only');
    expect(failureOf(() => bookIn(join(disk.folder, 'deeper')).open()).failure).toBe('read-only');
    expect(new BookFileReader(disk.folder, littleFold).sessions()).toEqual([]);
  });

  it.runIf(process.getuid?.() !== 0 && process.platform !== 'win32')('by another user', () => {
    const folder = dataFolder();
    chmodSync(folder, 0o500);
    onTestFinished(() => chmodSync(folder, 0o700));
    expect(failureOf(() => bookIn(folder).open()).failure).toBe('read-only');
  });

  it('as SQLite sees it', () => {
    const folder = dataFolder();
    const before = bookIn(folder);
    before.open();
    before.commit(first);
    before.close();
    const book = bookIn(folder, queryOnly);
    expect(book.open()).toMatchObject({ interrupted: [{ id: 'a' }], notKept: { failure: 'read-only' } });
    expect(failureOf(() => book.commit(second)).failure).toBe('read-only');
  });
});

describe('somebody else at the file', () => {
  it('who holds a lock is waited for, then named, and keeping goes on after', () => {
    const folder = dataFolder();
    const book = bookIn(folder, (file, options) => connectFile(file, { ...options, timeout: 20 }));
    book.open();
    book.commit(first);
    const other = new BetterSqlite3(join(folder, 'book.sqlite'));
    onTestFinished(() => void other.close());
    other.exec('BEGIN IMMEDIATE');
    const failure = failureOf(() => book.commit(second));
    expect(failure.failure).toBe('locked');
    expect(failure.message).toContain(join(folder, 'book.sqlite'));
    other.exec('ROLLBACK');
    book.commit(second);
    expect(verified(folder)).toMatchObject({ firstBadCommit: null, samples: 40 });
  });

  it('who reads holds up nobody, and sees only whole commits', () => {
    const folder = dataFolder();
    const book = bookIn(folder);
    book.open();
    book.commit(first);
    const other = new BetterSqlite3(join(folder, 'book.sqlite'), { readonly: true });
    onTestFinished(() => void other.close());
    const count = (table: string): unknown => other.prepare(`SELECT count(*) FROM ${table}`).pluck().get();
    other.exec('BEGIN');
    const before = [count('link'), count('input'), count('finding')];
    book.commit(second);
    book.commit(third);
    expect([count('link'), count('input'), count('finding')]).toEqual(before);
    other.exec('COMMIT');
    expect(count('link')).toBe(3);
  });

  it.runIf(process.platform !== 'win32')(
    'who takes the file away: it is said, and a new book is begun',
    () => {
      const folder = dataFolder();
      const book = bookIn(folder);
      book.open();
      book.commit(first);
      renameSync(join(folder, 'book.sqlite'), join(folder, 'elsewhere.sqlite'));
      const failure = failureOf(() => book.commit(second));
      expect(failure.failure).toBe('session-broken');
      expect(failure.message).toContain('moved, deleted or set aside');
      for (const commit of recording('b')) book.commit(commit);
      expect(new BookFileReader(folder, littleFold).sessions().map((s) => s.id)).toEqual(['b']);
    },
  );
});
