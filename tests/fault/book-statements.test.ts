import { describe, expect, it } from 'vitest';
import { type Book, BookFailure, type Commit } from '../../daemon/book/book.ts';
import { BookFileReader } from '../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../daemon/book/store/book-file.ts';
import { storeContract } from '../store-contract.ts';
import { contentsOf } from '../unit/book/contents.ts';
import { faultyDisk, type Trouble } from '../unit/book/faulty-disk.ts';
import { dataFolder, littleFold, recording, SET_ASIDE_UTC_MS } from '../unit/book/recording.ts';
import { fileStore, toEnd } from '../unit/book/stores.ts';

/** The disk fails at one statement after another: a commit is there whole or not at all, and the next one works. */

const codes = ['SQLITE_FULL', 'SQLITE_IOERR_WRITE', 'SQLITE_IOERR_FSYNC', 'SQLITE_BUSY', 'SQLITE_READONLY'];
const causes: Record<string, string> = {
  SQLITE_FULL: 'disk-full',
  SQLITE_IOERR_WRITE: 'other',
  SQLITE_IOERR_FSYNC: 'other',
  SQLITE_BUSY: 'locked',
  SQLITE_READONLY: 'read-only',
};

/** A disk whose n-th statement from now fails. */
function failingOnce() {
  let left = Number.POSITIVE_INFINITY;
  let code = '';
  return {
    connect: faultyDisk(() => (--left === 0 ? code : null)),
    arm: (n: number, withCode: string) => {
      left = n;
      code = withCode;
    },
    fired: () => left <= 0,
  };
}

const failureOf = (work: () => void): BookFailure | null => {
  try {
    work();
    return null;
  } catch (error) {
    if (error instanceof BookFailure) return error;
    throw error;
  }
};

describe.each(codes)('a disk that fails with %s', (code) => {
  it.each([0, 1])('at any statement of commit %i', (which) => {
    const commits = recording('a', { commits: 2 });
    let statements = 0;
    for (let n = 1; ; n++) {
      const folder = dataFolder();
      const disk = failingOnce();
      const book = new BookFile(folder, disk.connect);
      book.open(SET_ASIDE_UTC_MS);
      for (const earlier of commits.slice(0, which)) book.commit(earlier, SET_ASIDE_UTC_MS);
      const before = contentsOf(folder);
      disk.arm(n, code);
      const failure = failureOf(() => book.commit(commits[which] as Commit, SET_ASIDE_UTC_MS));
      if (!disk.fired()) break;
      statements++;
      expect(failure?.failure, `statement ${n}`).toBe(causes[code]);
      expect(contentsOf(folder), `statement ${n}`).toEqual(before);
      for (const commit of commits.slice(which)) book.commit(commit, SET_ASIDE_UTC_MS);
      const verified = toEnd(new BookFileReader(folder, littleFold).verify('a'));
      expect(verified, `statement ${n}`).toMatchObject({
        firstBadCommit: null,
        differences: [],
        samples: 40,
      });
      book.close();
    }
    // Begin, two look-ups, the inserts, commit.
    expect(statements).toBeGreaterThanOrEqual(7);
  });

  it('at any statement of opening', () => {
    const folder = dataFolder();
    const first = new BookFile(folder);
    first.open(SET_ASIDE_UTC_MS);
    for (const commit of recording('a', { ended: false })) first.commit(commit, SET_ASIDE_UTC_MS);
    first.close();
    let statements = 0;
    for (let n = 1; ; n++) {
      const disk = failingOnce();
      const book = new BookFile(folder, disk.connect);
      disk.arm(n, code);
      let notKept: string | undefined;
      const failure = failureOf(() => {
        const opened = book.open(SET_ASIDE_UTC_MS);
        notKept = opened.notKept?.failure;
        expect(opened).toMatchObject({ setAside: null, interrupted: [{ id: 'a' }] });
      });
      if (!disk.fired()) break;
      statements++;
      expect(failure?.failure ?? notKept, `statement ${n}`).toBe(causes[code]);
      book.close();
    }
    expect(statements).toBeGreaterThanOrEqual(15);
    const reader = new BookFileReader(folder, littleFold);
    expect(reader.session('a')?.endWhy).toBe('interrupted');
    expect(toEnd(reader.verify('a'))).toMatchObject({ firstBadCommit: null, differences: [] });
  });
});

/** Lets 3 to 60 statements through between two that fail, the same ones in each run (Lehmer's generator). */
function nowAndThen(seed: number): Trouble {
  let state = seed;
  let left = 3;
  return () => {
    if (--left > 0) return null;
    state = (state * 48_271) % 2_147_483_647;
    left = 3 + (state % 58);
    return 'SQLITE_IOERR_WRITE';
  };
}

const patiently = async <T>(work: () => Promise<T>): Promise<T> => {
  for (let tries = 1; ; tries++) {
    try {
      return await work();
    } catch (error) {
      const isDisk = error instanceof BookFailure && error.message.includes('made to fail');
      if (!isDisk || tries === 200) throw error;
    }
  }
};

storeContract('a disk that fails now and then, with a caller that tries again', (folder) => {
  const { book, reader } = fileStore(folder, faultyDisk(nowAndThen(1)));
  let before: Promise<unknown> = Promise.resolve();
  const patient: Book = {
    open: () =>
      patiently(async () => {
        const opened = await book.open();
        if (opened.notKept !== null) throw new BookFailure(opened.notKept.failure, opened.notKept.message);
        return opened;
      }),
    closeItem: (closing) => patiently(() => book.closeItem(closing)),
    addNote: (note) => patiently(() => book.addNote(note)),
    addShopEntry: (entry) => patiently(() => book.addShopEntry(entry)),
    commit: (commit) => {
      const now = before.then(() => patiently(() => book.commit(commit)));
      before = now.catch(() => undefined);
      return now;
    },
    close: () => book.close(),
  };
  return { book: patient, reader };
});
