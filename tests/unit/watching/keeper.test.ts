import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  type Book,
  BookFailure,
  type BookFailureCause,
  type Commit,
  type OpenedBook,
} from '../../../daemon/book/book.ts';
import { Keeper, type Keeping } from '../../../daemon/watching/keeper.ts';

const fine: OpenedBook = { setAside: null, interrupted: [], notKept: null };

/** A book whose next answers are set by the test; without any it works. */
class ScriptedBook {
  readonly opens: (OpenedBook | BookFailureCause)[] = [];
  readonly commits: BookFailureCause[] = [];
  opened = 0;
  committed = 0;
  closed = 0;

  readonly open = async (): Promise<OpenedBook> => {
    this.opened += 1;
    const next = this.opens.shift() ?? fine;
    if (typeof next === 'string') throw new BookFailure(next, `it is ${next}`);
    return next;
  };

  readonly commit = async (): Promise<void> => {
    this.committed += 1;
    const next = this.commits.shift();
    if (next !== undefined) throw new BookFailure(next, `it is ${next}`);
  };

  readonly close = async (): Promise<void> => {
    this.closed += 1;
  };
}

let book: ScriptedBook;
let told: Keeping[];
let opened: OpenedBook[];
let keeper: Keeper;
const commit = { session: 's' } as Commit;

beforeEach(() => {
  vi.useFakeTimers();
  book = new ScriptedBook();
  told = [];
  opened = [];
  keeper = new Keeper(
    book as unknown as Book,
    (one) => opened.push(one),
    (keeping) => told.push(keeping),
  );
});
afterEach(() => vi.useRealTimers());

describe('opening the book', () => {
  it('tells what was opened, and nothing where all is well', async () => {
    await keeper.open();
    expect(opened).toEqual([fine]);
    expect(told).toEqual([]);
  });

  it('is tried again every few seconds where it fails, and the reason is told once', async () => {
    book.opens.push('locked', 'locked', 'disk-full');
    await keeper.open();
    expect(told).toEqual([{ kept: false, detail: 'it is locked' }]);
    await vi.advanceTimersByTimeAsync(3000);
    expect(told).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(3000);
    expect(told.at(-1)).toEqual({ kept: false, detail: 'it is disk-full' });
    await vi.advanceTimersByTimeAsync(3000);
    expect(told.at(-1)).toEqual({ kept: true, detail: '' });
    expect(opened).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(book.opened).toBe(4);
  });

  it('that could not write is tried again while nothing is recorded', async () => {
    book.opens.push({ ...fine, notKept: { failure: 'read-only', message: 'only to be read' } });
    await keeper.open();
    expect(told).toEqual([{ kept: false, detail: 'only to be read' }]);
    await vi.advanceTimersByTimeAsync(3000);
    expect(told.at(-1)).toEqual({ kept: true, detail: '' });
  });

  it('is never done again once a session is in it: opening ends what was not ended', async () => {
    book.opens.push({ ...fine, notKept: { failure: 'read-only', message: 'only to be read' } });
    book.commits.push('read-only');
    await keeper.open();
    expect(await keeper.commit(commit)).toBe('not-yet');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(book.opened).toBe(1);
  });
});

describe('a commit', () => {
  it('before the book is open is not made', async () => {
    expect(await keeper.commit(commit)).toBe('not-yet');
    expect(book.committed).toBe(0);
  });

  it.each(['disk-full', 'read-only', 'locked', 'other'] as const)(
    'that fails (%s) may be tried again',
    async (cause) => {
      book.commits.push(cause);
      await keeper.open();
      expect(await keeper.commit(commit)).toBe('not-yet');
      expect(told).toEqual([{ kept: false, detail: `it is ${cause}` }]);
      expect(await keeper.commit(commit)).toBe('kept');
      expect(told.at(-1)).toEqual({ kept: true, detail: '' });
    },
  );

  it.each(['damaged', 'session-broken'] as const)(
    'whose session is gone (%s) never will be kept',
    async (cause) => {
      book.commits.push(cause);
      await keeper.open();
      expect(await keeper.commit(commit)).toBe('never');
      expect(told).toEqual([{ kept: false, detail: `it is ${cause}` }]);
    },
  );
});

describe('closing', () => {
  it('closes the book, also one that could not be opened, and tries nothing more', async () => {
    book.opens.push('locked');
    await keeper.open();
    await keeper.close();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(book).toMatchObject({ opened: 1, closed: 1 });
  });
});
