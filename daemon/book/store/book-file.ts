import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure, type Commit, type ItemClosing, type OpenedBook } from '../book.ts';
import { type Append, appender } from './append.ts';
import { checkBytes, checkIsBook, checkStructure, onSoundSchema } from './check.ts';
import { closer } from './closings.ts';
import { type Connect, closeQuietly, connectFile, connectForWriting, orClose } from './connect.ts';
import { toBookFailure } from './failure.ts';
import { findInterrupted } from './interrupted.ts';
import { noter, shopKeeper } from './journals.ts';
import { migrate } from './migrations.ts';
import { setAside } from './set-aside.ts';

/** The book's file in a data folder. */
export const bookFileIn = (folder: string): string => join(folder, 'book.sqlite');

interface Connection {
  readonly db: Database;
  readonly append: Append;
  readonly close: (closing: ItemClosing) => ItemClosing;
  readonly note: (note: PieceNote) => PieceNote;
  readonly shop: (entry: ShopEntry) => ShopEntry;
  /** The file that is open, whatever its name is by now. */
  readonly inode: number;
}

/**
 * The book as a file, for writing. Synchronous: each call returns when its work is on the disk, or throws
 * `BookFailure` and has changed nothing. After a failure the next call tries again, with a new connection where the
 * old one is not to be trusted.
 */
export class BookFile {
  readonly #folder: string;
  readonly #file: string;
  readonly #connect: Connect;
  #connection: Connection | null = null;
  #bytesChecked = false;
  /** Where a damaged book was set aside, until `open` has told it. */
  #aside: string | null = null;
  /** Last links of interrupted sessions that could not be written yet. */
  #endings: readonly Commit[] = [];

  constructor(folder: string, connect: Connect = connectFile) {
    this.#folder = folder;
    this.#file = bookFileIn(folder);
    this.#connect = connect;
  }

  /**
   * Opens or makes the book and ends interrupted sessions; a damaged one is set aside first. Where a book can be read
   * and not written, what was interrupted is told all the same.
   */
  open(nowUtcMs: number): OpenedBook {
    try {
      return this.#openAndEnd();
    } catch (error) {
      const failure = this.#failed(error);
      if (failure.failure !== 'damaged') throw failure;
    }
    this.#aside = this.#setAside(nowUtcMs);
    try {
      return this.#openAndEnd();
    } catch (error) {
      throw this.#failed(error);
    }
  }

  /**
   * Adds a commit. Where the book turns out to be damaged it is set aside and a new one begun; the commit fails, and
   * so do later ones of a session that went aside with it (`session-broken`).
   */
  commit(commit: Commit, nowUtcMs: number): void {
    try {
      const { append } = this.#connected();
      this.#endInterrupted(append);
      append(commit);
    } catch (error) {
      const failure = this.#failed(error);
      if (failure.failure !== 'damaged') throw failure;
      const under = this.#setAside(nowUtcMs);
      throw new BookFailure('damaged', bookWords.setAside(this.#file, under));
    }
  }

  /** Keeps what was found of an item; gives the closing that stands, which may be an earlier one. */
  closeItem(closing: ItemClosing): ItemClosing {
    try {
      return this.#connected().close(closing);
    } catch (error) {
      throw this.#failed(error);
    }
  }

  /** Keeps what was said of a piece; gives the note that stands, which may be the same one of before. */
  addNote(note: PieceNote): PieceNote {
    try {
      return this.#connected().note(note);
    } catch (error) {
      throw this.#failed(error);
    }
  }

  /** Keeps what happened in the shop; gives the entry that stands, which may be the same one of before. */
  addShopEntry(entry: ShopEntry): ShopEntry {
    try {
      return this.#connected().shop(entry);
    } catch (error) {
      throw this.#failed(error);
    }
  }

  /** Copies the log into the book and closes it. */
  close(): void {
    const db = this.#connection?.db;
    this.#connection = null;
    try {
      db?.close();
    } catch (error) {
      throw toBookFailure(error, this.#file);
    }
  }

  #openAndEnd(): OpenedBook {
    this.#drop();
    const { db, append } = this.#connected();
    const { interrupted, endings } = findInterrupted(db);
    this.#endings = endings;
    const opened = { setAside: this.#aside, interrupted, notKept: this.#whyNotEnded(append) };
    this.#aside = null;
    return opened;
  }

  #whyNotEnded(append: Append): OpenedBook['notKept'] {
    try {
      this.#endInterrupted(append);
      return null;
    } catch (error) {
      const { failure, message } = this.#failed(error);
      if (failure === 'damaged') throw error;
      return { failure, message };
    }
  }

  #endInterrupted(append: Append): void {
    for (let ending = this.#endings[0]; ending !== undefined; ending = this.#endings[0]) {
      try {
        append(ending);
      } catch (error) {
        // Its session went away with another file: there is nothing to end any more.
        if (!(error instanceof BookFailure && error.failure === 'session-broken')) throw error;
      }
      this.#endings = this.#endings.slice(1);
    }
  }

  #connected(): Connection {
    if (this.#connection !== null && inodeOf(this.#file) !== this.#connection.inode) this.#drop();
    this.#connection ??= this.#connectNow();
    return this.#connection;
  }

  #connectNow(): Connection {
    mkdirSync(this.#folder, { recursive: true });
    this.#checkBytesOnce();
    const db = connectForWriting(this.#file, this.#folder, this.#connect);
    return orClose(db, () => {
      checkIsBook(db, this.#file);
      migrate(db);
      return onSoundSchema(() => {
        checkStructure(db, this.#file);
        const inode = inodeOf(this.#file);
        return {
          db,
          append: appender(db, this.#file),
          close: closer(db),
          note: noter(db),
          shop: shopKeeper(db),
          inode,
        };
      });
    });
  }

  #checkBytesOnce(): void {
    if (this.#bytesChecked) return;
    this.#bytesChecked = true;
    checkBytes(this.#file);
  }

  /** A full disk or a lock leaves the connection as good as it was; after anything else it is not used again. */
  #failed(error: unknown): BookFailure {
    const failure = toBookFailure(error, this.#file);
    const isGood =
      failure.failure === 'disk-full' || failure.failure === 'locked' || error instanceof BookFailure;
    if (!isGood || this.#connection?.db.inTransaction === true) this.#drop();
    return failure;
  }

  #setAside(nowUtcMs: number): string {
    this.#drop();
    this.#endings = [];
    try {
      return setAside(this.#file, nowUtcMs);
    } catch (error) {
      throw toBookFailure(error, this.#file);
    }
  }

  #drop(): void {
    const dropped = this.#connection;
    this.#connection = null;
    if (dropped !== null) closeQuietly(dropped.db);
  }
}

/** What file stands under this name; -1 where none does. */
const inodeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.ino ?? -1;
