import { existsSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import { bookWords } from '../../../shared/words/book.ts';
import {
  BookFailure,
  type SessionHead,
  type SessionSummary,
  type ShopRecord,
  type SuspectItem,
  type TraceAsked,
  type TraceRead,
  type Verification,
} from '../book.ts';
import { bookFileIn } from '../store/book-file.ts';
import { checkIsBook } from '../store/check.ts';
import { type Connect, closeQuietly, connectFile, connectForReading, orClose } from '../store/connect.ts';
import { toBookFailure } from '../store/failure.ts';
import { notesIn, shopEntriesIn } from '../store/journals.ts';
import { BOOK_VERSION, OLDEST_READABLE, versionOf } from '../store/migrations.ts';
import { parseFinding, parseHead } from '../store/parse.ts';
import { type BookRows, bookRows } from '../store/rows.ts';
import { csvChunks } from './csv.ts';
import type { Fold } from './fold.ts';
import { ItemsOfBook } from './items.ts';
import { summaryOf } from './summary.ts';
import { TraceShelf } from './trace/shelf.ts';
import { verifySession } from './verify.ts';
import { visitsIn } from './visits.ts';

/**
 * Reads the book's file. Each call opens it anew, so that it always reads the file that stands there, and none is
 * held open between calls; what was worked out of a session is kept for the next. All throw `BookFailure`; without a file there are no sessions.
 */
export class BookFileReader {
  readonly #file: string;
  readonly #fold: Fold;
  readonly #connect: Connect;
  readonly #shelf: TraceShelf;
  readonly #items = new ItemsOfBook();

  constructor(folder: string, fold: Fold, connect: Connect = connectFile) {
    this.#file = bookFileIn(folder);
    this.#fold = fold;
    this.#connect = connect;
    this.#shelf = new TraceShelf(fold);
  }

  /** All sessions, newest first. */
  sessions(): SessionSummary[] {
    return this.#read([], (rows) => rows.sessionNumbers().map((number) => summaryOf(rows, number)));
  }

  session(id: string): SessionSummary | null {
    return this.#read(null, (rows) => {
      const number = rows.sessionNumber(id);
      return number === null ? null : summaryOf(rows, number);
    });
  }

  /** A session's findings as they stand in the book, in order. */
  findings(id: string): FoundEntry[] {
    return (
      this.#read<FoundEntry[] | null>(null, (rows) => {
        const number = rows.sessionNumber(id);
        if (number === null) return null;
        return rows.findings(number).map(({ seq, tMs, json }) => ({ seq, tMs, finding: parseFinding(json) }));
      }) ?? this.#noSuchSession(id)
    );
  }

  /** The readings in chunks of text; the file is open until the last one, or until the generator is returned. */
  *readingsCsv(id: string): Generator<string> {
    yield* this.#readOne(id, (rows, number, head) => csvChunks(rows, number, head, this.#fold));
  }

  /** Checks and replays a session; yields between commits, returns what was found. */
  *verify(id: string): Generator<undefined, Verification> {
    return yield* this.#readOne(id, (rows, number, head) => verifySession(rows, number, head, this.#fold));
  }

  /** A session's trace, as far as it has been read before `enough` said so; yields between commits. */
  *trace(id: string, asked: TraceAsked, enough: () => boolean): Generator<undefined, TraceRead> {
    return yield* this.#readOne(id, (rows, number, head) =>
      this.#shelf.read(rows, number, head, { asked, enough }),
    );
  }

  /** The areas suspect of all sessions, newest first. */
  items(): readonly SuspectItem[] {
    return this.#read<readonly SuspectItem[]>([], (rows, db) => this.#items.read(db, rows));
  }

  /** What all sessions did to the pieces, what was said of them, and what else happened in the shop. */
  shop(): ShopRecord {
    const nothing: ShopRecord = { visits: [], notes: [], entries: [], unreadable: 0 };
    return this.#read(nothing, (_rows, db) => ({
      visits: visitsIn(db),
      notes: notesIn(db),
      ...shopEntriesIn(db),
    }));
  }

  #read<T>(without: T, use: (rows: BookRows, db: Database) => T): T {
    if (!existsSync(this.#file)) return without;
    try {
      const db = this.#open();
      try {
        return use(bookRows(db), db);
      } finally {
        closeQuietly(db);
      }
    } catch (error) {
      throw this.#failed(error);
    }
  }

  *#readOne<Y, R>(
    id: string,
    use: (rows: BookRows, number: number, head: SessionHead) => Generator<Y, R>,
  ): Generator<Y, R> {
    if (!existsSync(this.#file)) return this.#noSuchSession(id);
    try {
      const db = this.#open();
      try {
        const rows = bookRows(db);
        const number = rows.sessionNumber(id) ?? this.#noSuchSession(id);
        return yield* use(rows, number, parseHead(rows.head(number)));
      } finally {
        closeQuietly(db);
      }
    } catch (error) {
      throw this.#failed(error);
    }
  }

  #open(): Database {
    const db = connectForReading(this.#file, this.#connect);
    return orClose(db, () => {
      checkIsBook(db, this.#file);
      const version = versionOf(db);
      if (version < OLDEST_READABLE)
        throw new BookFailure('other', bookWords.olderThanProgram(this.#file, version, BOOK_VERSION));
      return db;
    });
  }

  #failed(error: unknown): BookFailure {
    const failure = toBookFailure(error, this.#file);
    return failure.failure === 'read-only'
      ? new BookFailure('read-only', bookWords.readOnlyForReading(this.#file))
      : failure;
  }

  #noSuchSession(id: string): never {
    throw new BookFailure('no-such-session', bookWords.noSuchSession(id, this.#file));
  }
}
