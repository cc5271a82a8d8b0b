import { setImmediate } from 'node:timers/promises';
import { replay } from '../../../shared/watch/replay.ts';
import { FOLD_VERSION } from '../../../shared/watch/watch.ts';
import { BookFileReader } from '../read/book-file-reader.ts';
import type { ReaderCalls } from './calls.ts';
import { serve, threadData } from './serve.ts';

/** The thread that reads the book: heavy reads, replay included, hold up neither writing nor watching. */

/** Other calls get their turn at least so often during a long verification, ms. */
const TURN_MS = 50;
/** A trace is answered after so long at the latest, ms, with what has been worked out by then. */
const TRACE_MS = 120;

const reader = new BookFileReader(threadData.folder, { version: FOLD_VERSION, replay });
const streams = new Map<number, Generator<string>>();

serve<ReaderCalls>({
  sessions: () => reader.sessions(),
  session: ({ session }) => reader.session(session),
  findings: ({ session }) => reader.findings(session),
  verify: ({ session }) => inTurns(reader.verify(session)),
  trace: ({ session, asked }) => {
    const endMs = performance.now() + TRACE_MS;
    return inTurns(reader.trace(session, asked, () => performance.now() >= endMs));
  },
  items: () => reader.items(),
  shop: () => reader.shop(),
  csvBegin: ({ stream, session }) => {
    streams.set(stream, reader.readingsCsv(session));
    return null;
  },
  csvNext: ({ stream }) => {
    const chunks = streams.get(stream);
    if (chunks === undefined) throw new RangeError(`There is no stream ${stream}.`);
    const next = chunks.next();
    if (next.done !== true) return next.value;
    streams.delete(stream);
    return null;
  },
  csvStop: ({ stream }) => {
    streams.get(stream)?.return(null);
    streams.delete(stream);
    return null;
  },
});

async function inTurns<R>(work: Generator<undefined, R>): Promise<R> {
  for (let turnEndMs = performance.now() + TURN_MS; ; ) {
    const next = work.next();
    if (next.done === true) return next.value;
    if (performance.now() < turnEndMs) continue;
    // oxlint-disable-next-line eslint/no-await-in-loop -- giving way is the purpose
    await setImmediate();
    turnEndMs = performance.now() + TURN_MS;
  }
}
