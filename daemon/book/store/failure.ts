import { accessSync, constants, statfsSync } from 'node:fs';
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
  const cause = error instanceof BookDamaged ? 'damaged' : causeOf(code, dirname(file));
  const failure = new BookFailure(cause, sentence(cause, file, code, detail));
  failure.cause = error;
  return failure;
}

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
  return code.startsWith('SQLITE_CANTOPEN') ? whyNotOpened(folder) : 'other';
}

/** SQLite says only that it can't open a file; the folder says why. */
function whyNotOpened(folder: string): BookFailureCause {
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
