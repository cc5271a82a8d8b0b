import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure } from '../book.ts';
import { BookDamaged, codeOf } from './failure.ts';
import { APPLICATION_ID, BOOK_VERSION, tables, versionOf } from './migrations.ts';

/**
 * Up to this size the whole structure of a book is checked when it is opened. Above, only what appending needs is
 * read: the header, the schema and, by whoever looks for interrupted sessions, each session's last commit. A bad
 * page in the middle of a large book spoils the old sessions on it and nothing else; it is found when they are read,
 * and setting the whole book aside for it would take the good sessions out of sight too.
 */
const CHECKED_WHOLE_BYTES = 16 * 2 ** 20;

/** The first bytes of every SQLite file, and of its log (https://sqlite.org/fileformat.html, 1.3 and 4.1). */
const FILE_MAGIC = Buffer.from('SQLite format 3\0', 'latin1');
const LOG_MAGIC = [0x377f0682, 0x377f0683];

/**
 * Looks at the bytes before SQLite does: it would throw away a log that belongs to no readable file, and with it the
 * latest commits. A log whose start was never written (all zeros, after a power cut) holds no commit.
 *
 * To be called once in a process, since the book's file stays open: on POSIX systems closing it would also let go of
 * the locks that SQLite holds on it in this process (https://sqlite.org/howtocorrupt.html, 2.2).
 * Throws `BookDamaged` or the file system's error.
 */
export function checkBytes(file: string): void {
  const head = existsSync(file) ? firstBytes(openSync(file, 'r'), FILE_MAGIC.length) : Buffer.alloc(0);
  if (head.length > 0 && !head.equals(FILE_MAGIC)) throw new BookDamaged('not a SQLite file');
  const log = logStart(`${file}-wal`);
  if (head.length === 0 && log.length > 0) throw new BookDamaged('a log without its file');
  const isLog = log.length < 4 || [0, ...LOG_MAGIC].includes(log.readUInt32BE(0));
  if (!isLog) throw new BookDamaged('an unreadable log');
}

function logStart(file: string): Buffer {
  if (!existsSync(file)) return Buffer.alloc(0);
  const descriptor = openSync(file, 'r');
  try {
    return firstBytes(descriptor, 4);
  } finally {
    closeSync(descriptor);
  }
}

function firstBytes(descriptor: number, count: number): Buffer {
  const bytes = Buffer.alloc(count);
  return bytes.subarray(0, readSync(descriptor, bytes, 0, count, 0));
}

/** Refuses what is no book, or a newer one. Throws `BookFailure`, `BookDamaged` or SQLite's own error. */
export function checkIsBook(db: Database, file: string): void {
  const version = versionOf(db);
  const isEmpty = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0;
  if (isEmpty && version === 0) return;
  if (db.pragma('application_id', { simple: true }) !== APPLICATION_ID) throw new BookDamaged('not a book');
  if (version > BOOK_VERSION)
    throw new BookFailure('newer-than-program', bookWords.newerThanProgram(file, version, BOOK_VERSION));
}

/**
 * Runs statements of ours that a sound book of this version takes: where SQLite can't make sense of one, the damage is in
 * the text of the schema, which it keeps in the file. Throws `BookDamaged` or SQLite's own error.
 */
export function onSoundSchema<T>(use: () => T): T {
  try {
    return use();
  } catch (error) {
    if (codeOf(error) !== 'SQLITE_ERROR') throw error;
    throw new BookDamaged(error instanceof Error ? error.message : String(error));
  }
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
