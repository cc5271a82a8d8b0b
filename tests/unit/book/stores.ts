import type { Book, BookReader } from '../../../daemon/book/book.ts';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import type { Fold } from '../../../daemon/book/read/fold.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import type { Connect } from '../../../daemon/book/store/connect.ts';
import { replay } from '../../../shared/watch/replay.ts';
import { FOLD_VERSION } from '../../../shared/watch/watch.ts';
import type { Store } from '../../store-contract.ts';
import { SET_ASIDE_UTC_MS } from './recording.ts';

export const watchFold: Fold = { version: FOLD_VERSION, replay };

/** The file store without its threads. */
export function fileStore(folder: string, connect?: Connect): Store {
  return {
    book: asBook(new BookFile(folder, connect)),
    reader: asReader(new BookFileReader(folder, watchFold)),
  };
}

const asBook = (file: BookFile): Book => ({
  open: async () => file.open(SET_ASIDE_UTC_MS),
  commit: async (commit) => file.commit(commit, SET_ASIDE_UTC_MS),
  closeItem: async (closing) => file.closeItem(closing),
  addNote: async (note) => file.addNote(note),
  addShopEntry: async (entry) => file.addShopEntry(entry),
  close: async () => file.close(),
});

const asReader = (file: BookFileReader): BookReader => ({
  sessions: async () => file.sessions(),
  session: async (id) => file.session(id),
  findings: async (id) => file.findings(id),
  async *readingsCsv(id) {
    yield* file.readingsCsv(id);
  },
  verify: async (id) => toEnd(file.verify(id)),
  trace: async (id, asked) => toEnd(file.trace(id, asked, () => false)),
  items: async () => file.items(),
  shop: async () => file.shop(),
  close: async () => undefined,
});

/** Runs a generator to its end, for what it returns. */
export function toEnd<R>(work: Generator<unknown, R>): R {
  for (;;) {
    const next = work.next();
    if (next.done === true) return next.value;
  }
}
