import { BookFile } from '../store/book-file.ts';
import type { WriterCalls } from './calls.ts';
import { serve, threadData } from './serve.ts';

/** The thread that writes the book: a slow disk holds up nobody else. */

const book = new BookFile(threadData.folder);

serve<WriterCalls>({
  open: ({ nowUtcMs }) => book.open(nowUtcMs),
  commit: ({ commit, nowUtcMs }) => {
    book.commit(commit, nowUtcMs);
    return null;
  },
  closeItem: ({ closing }) => book.closeItem(closing),
  addShopEntry: ({ entry }) => book.addShopEntry(entry),
  addNote: ({ note }) => book.addNote(note),
  close: () => {
    book.close();
    return null;
  },
});
