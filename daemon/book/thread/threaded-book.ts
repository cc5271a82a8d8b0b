import type { Book } from '../book.ts';
import type { WriterCalls } from './calls.ts';
import { ThreadCaller } from './thread-caller.ts';

export interface ThreadedBookOptions {
  /** The data folder. */
  readonly folder: string;
  /** The wall clock, ms since 1970: dates a damaged book that is set aside. */
  readonly nowUtcMs: () => number;
}

/** The book, written by a thread of its own. Works from the build only: the thread is a file beside this one. */
export function threadedBook({ folder, nowUtcMs }: ThreadedBookOptions): Book {
  const thread = new ThreadCaller<WriterCalls>(new URL('./writer-thread.js', import.meta.url), { folder });
  return {
    open: () => thread.ask('open', { nowUtcMs: nowUtcMs() }),
    commit: async (commit) => {
      await thread.ask('commit', { commit, nowUtcMs: nowUtcMs() });
    },
    closeItem: (closing) => thread.ask('closeItem', { closing }),
    addShopEntry: (entry) => thread.ask('addShopEntry', { entry }),
    addNote: (note) => thread.ask('addNote', { note }),
    close: async () => {
      try {
        if (thread.isRunning) await thread.ask('close', {});
      } finally {
        await thread.close();
      }
    },
  };
}
