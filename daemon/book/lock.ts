import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { bookWords } from '../../shared/words/book.ts';
import { closeQuietly } from './store/connect.ts';
import { codeOf } from './store/failure.ts';

/** What came of asking for a data folder's lock. */
export type Lock =
  | { readonly kind: 'taken'; readonly release: () => void }
  /** Another daemon works on this folder. */
  | { readonly kind: 'held' }
  /** Nobody can lock here (folder read-only, disk full): a sentence that says so. */
  | { readonly kind: 'unavailable'; readonly message: string };

/**
 * Takes the lock that lets one daemon alone work on a data folder: an exclusive SQLite transaction, never committed, on
 * a file of its own. The system lets go of it however the process ends, and nothing of it has to be cleaned up.
 */
export function takeLock(folder: string): Lock {
  const file = join(folder, 'lock.sqlite');
  let db: Database | null = null;
  try {
    mkdirSync(folder, { recursive: true });
    db = new BetterSqlite3(file, { timeout: 0 });
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    if (db !== null) closeQuietly(db);
    if (codeOf(error).startsWith('SQLITE_BUSY')) return { kind: 'held' };
    const detail = error instanceof Error ? error.message : String(error);
    return { kind: 'unavailable', message: bookWords.lockUnavailable(file, detail) };
  }
  const held = db;
  return { kind: 'taken', release: () => closeQuietly(held) };
}
