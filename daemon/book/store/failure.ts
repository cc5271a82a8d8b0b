import { accessSync, constants, existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure, type BookFailureCause } from '../book.ts';

/** What the book holds is not what a book holds: it has to be set aside. */
export class BookDamaged extends Error {
  constructor(what: string) {
    super(what);
    this.name = 'BookDamaged';
  }
}

/** Turns whatever SQLite, the file system or our own checks threw into a failure with a sentence for the user. */
export function toBookFailure(error: unknown, file: string): BookFailure {
  if (error instanceof BookFailure) return error;
  const code = codeOf(error);
  const detail = error instanceof Error ? error.message : String(error);
  const cause = isDamage(error, detail) ? 'damaged' : causeOf(code, dirname(file));
  const failure = new BookFailure(cause, sentence(cause, file, code, detail));
  failure.cause = error;
  return failure;
}

/** SQLite gives no code of its own to text in a row that is no JSON any more. */
const isDamage = (error: unknown, detail: string): boolean =>
  error instanceof BookDamaged || detail === 'malformed JSON';

export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** SQLite's result codes (https://sqlite.org/rescode.html) and Node's for the same troubles. */
const causes: readonly (readonly [RegExp, BookFailureCause])[] = [
  [/^SQLITE_(FULL|IOERR_SHMSIZE)$|^(ENOSPC|EDQUOT)$/, 'disk-full'],
  [/^SQLITE_(READONLY|PERM)|^(EROFS|EACCES|EPERM)$/, 'read-only'],
  [/^SQLITE_(BUSY|LOCKED|PROTOCOL)|^EBUSY$/, 'locked'],
  [/^SQLITE_(CORRUPT|NOTADB)/, 'damaged'],
];

function causeOf(code: string, folder: string): BookFailureCause {
  const known = causes.find(([pattern]) => pattern.test(code));
  if (known !== undefined) return known[1];
  // SQLite says only that it can't open a file, and Node of a folder on a read-only disk that it isn't there.
  return /^SQLITE_CANTOPEN|^ENOENT$/.test(code) ? whyNotMade(folder) : 'other';
}

/** Why nothing can be made in a folder, or in the nearest one above it that is there. */
function whyNotMade(folder: string): BookFailureCause {
  if (!existsSync(folder) && dirname(folder) !== folder) return whyNotMade(dirname(folder));
  try {
    accessSync(folder, constants.W_OK);
    return statfsSync(folder).bavail === 0 ? 'disk-full' : 'other';
  } catch (error) {
    return /^(EROFS|EACCES|EPERM)$/.test(codeOf(error)) ? 'read-only' : 'other';
  }
}

function sentence(cause: BookFailureCause, file: string, code: string, detail: string): string {
  if (cause === 'disk-full') return bookWords.diskFull(dirname(file));
  if (cause === 'read-only') return bookWords.readOnly(dirname(file));
  if (cause === 'locked') return bookWords.locked(file);
  if (cause === 'damaged') return bookWords.damaged(file);
  if (/^(SQLITE_IOERR|EIO$)/.test(code)) return bookWords.ioError(file, `${code}: ${detail}`);
  return bookWords.other(file, detail);
}
