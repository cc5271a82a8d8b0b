import type { BookReader } from '../book.ts';
import type { ReaderCalls } from './calls.ts';
import { ThreadCaller } from './thread-caller.ts';

/** Reads the book in a thread of its own, which starts with the first call. Works from the build only. */
export function threadedReader({ folder }: { readonly folder: string }): BookReader {
  const thread = new ThreadCaller<ReaderCalls>(new URL('./reader-thread.js', import.meta.url), { folder });
  let lastStream = 0;

  async function* readingsCsv(session: string): AsyncGenerator<string> {
    const stream = ++lastStream;
    await thread.ask('csvBegin', { stream, session });
    let whole = false;
    try {
      for (;;) {
        // oxlint-disable-next-line eslint/no-await-in-loop -- the next chunk is made when it is asked for
        const chunk = await thread.ask('csvNext', { stream });
        if (chunk === null) break;
        yield chunk;
      }
      whole = true;
    } finally {
      // Where the reader gave up, or failed and is gone already, nobody waits for the answer.
      if (!whole) thread.ask('csvStop', { stream }).catch(() => undefined);
    }
  }

  return {
    sessions: () => thread.ask('sessions', {}),
    session: (id) => thread.ask('session', { session: id }),
    findings: (id) => thread.ask('findings', { session: id }),
    verify: (id) => thread.ask('verify', { session: id }),
    trace: (id, asked) => thread.ask('trace', { session: id, asked }),
    items: () => thread.ask('items', {}),
    shop: () => thread.ask('shop', {}),
    readingsCsv,
    close: () => thread.close(),
  };
}
