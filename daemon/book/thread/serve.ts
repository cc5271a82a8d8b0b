import { parentPort, workerData } from 'node:worker_threads';
import { bookFileIn } from '../store/book-file.ts';
import { toBookFailure } from '../store/failure.ts';
import type { Answer, Call, Calls, ThreadData } from './calls.ts';

export type Handlers<C extends Calls<C>> = {
  readonly [K in keyof C]: (takes: C[K]['takes']) => C[K]['gives'] | Promise<C[K]['gives']>;
};

/** What this thread was told at its start. */
export const threadData = workerData as ThreadData;

/** Answers the main thread's calls, each begun in the order that it came in. A failed call fails alone. */
export function serve<C extends Calls<C>>(handlers: Handlers<C>): void {
  const answer = async ({ id, name, takes }: Call<C>): Promise<Answer> => {
    try {
      return { id, ok: true, gives: await handlers[name](takes) };
    } catch (error) {
      const { failure, message } = toBookFailure(error, bookFileIn(threadData.folder));
      return { id, ok: false, failure, message };
    }
  };
  const reply = async (call: Call<C>): Promise<void> => {
    const given = await answer(call);
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread's port has no origins
    parentPort?.postMessage(given);
  };
  parentPort?.on('message', (call: Call<C>) => void reply(call));
}
