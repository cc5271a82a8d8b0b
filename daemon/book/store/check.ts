import { statSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure } from '../book.ts';
import { BookDamaged } from './failure.ts';
import { APPLICATION_ID, BOOK_VERSION, tables, versionOf } from './migrations.ts';

/**
 * Up to this size the whole structure of a book is checked when it is opened. Above, only what appending needs is
 * read: the header, the schema and, by whoever looks for interrupted sessions, each session's last commit. A bad
 * page in the middle of a large book spoils the old sessions on it and nothing else; it is found when they are read,
 * and setting the whole book aside for it would take the good sessions out of sight too.
 */
const CHECKED_WHOLE_BYTES = 16 * 2 ** 20;

/** Refuses what is no book, or a newer one. Throws `BookFailure`, `BookDamaged` or SQLite's own error. */
export function checkIsBook(db: Database, file: string): void {
  const version = versionOf(db);
  const isEmpty = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0;
  if (isEmpty && version === 0) return;
  if (db.pragma('application_id', { simple: true }) !== APPLICATION_ID) throw new BookDamaged('not a book');
  if (version > BOOK_VERSION)
    throw new BookFailure('newer-than-program', bookWords.newerThanProgram(file, version, BOOK_VERSION));
}

/** Checks a book of this version. Throws `BookDamaged` or SQLite's own error. */
export function checkStructure(db: Database, file: string): void {
  const there = db.prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
  const missing = tables.filter((table) => !there.includes(table));
  if (missing.length > 0) throw new BookDamaged(`without its table ${missing.join(', ')}`);
  if (statSync(file).size > CHECKED_WHOLE_BYTES) return;
  const found = db.pragma('quick_check(1)', { simple: true });
  if (found !== 'ok') throw new BookDamaged(String(found));
}
