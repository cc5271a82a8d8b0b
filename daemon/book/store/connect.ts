import BetterSqlite3, { type Database } from 'better-sqlite3';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure } from '../book.ts';

/** Opens a SQLite file; tests put a faulty disk in its place. */
export type Connect = (file: string, options: ConnectOptions) => Database;

export interface ConnectOptions {
  readonly readonly?: boolean;
  readonly fileMustExist?: boolean;
  /** How long to wait for another connection's lock, ms. */
  readonly timeout?: number;
}

export const connectFile: Connect = (file, options) => new BetterSqlite3(file, options);

const WAIT_FOR_LOCK_MS = 2000;
/** The log is cut back to this after it has been copied into the book, bytes. */
const LOG_KEPT = 8 * 2 ** 20;

/**
 * Opens a book for writing, so that a commit that has returned outlives a power cut. SQLite in WAL falls back to
 * synchronous NORMAL with every new connection, hence it is set, and read back, each time.
 */
export function connectForWriting(file: string, folder: string, connect: Connect): Database {
  const db = connect(file, { timeout: WAIT_FOR_LOCK_MS });
  return orClose(db, () => {
    const mode = db.pragma('journal_mode = WAL', { simple: true });
    if (mode !== 'wal') throw new BookFailure('other', bookWords.noLog(folder));
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    // On macOS only these two make the drive itself write; elsewhere they do nothing.
    db.pragma('fullfsync = ON');
    db.pragma('checkpoint_fullfsync = ON');
    db.pragma(`journal_size_limit = ${LOG_KEPT}`);
    guard(db);
    const isSet = (name: string, value: number) => Number(db.pragma(name, { simple: true })) === value;
    if (!isSet('synchronous', 2) || !isSet('foreign_keys', 1))
      throw new BookFailure('other', bookWords.notDurable(folder));
    return db;
  });
}

/** Opens a book for reading only. Throws where there is none. */
export function connectForReading(file: string, connect: Connect): Database {
  const db = connect(file, { readonly: true, fileMustExist: true, timeout: WAIT_FOR_LOCK_MS });
  return orClose(db, () => {
    guard(db);
    return db;
  });
}

/** Runs `use`; where it throws, the connection is not left open behind it. */
export function orClose<T>(db: Database, use: () => T): T {
  try {
    return use();
  } catch (error) {
    closeQuietly(db);
    throw error;
  }
}

/** For a connection that has already failed: what it failed of is told, not that it would not close either. */
export function closeQuietly(db: Database): void {
  try {
    db.close();
  } catch {
    // The first failure is on its way to the user.
  }
}

/** A garbled file must be noticed rather than believed. */
function guard(db: Database): void {
  db.pragma('cell_size_check = ON');
  db.pragma('trusted_schema = OFF');
}
