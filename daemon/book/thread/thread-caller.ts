import { Worker } from 'node:worker_threads';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure } from '../book.ts';
import type { Answer, Call, Calls, ThreadData } from './calls.ts';

interface Waiting {
  readonly resolve: (gives: unknown) => void;
  readonly reject: (failure: BookFailure) => void;
}

/**
 * Calls a thread, which starts with the first call. Calls are taken up in order, and each settles by itself. Should
 * the thread die, what it owed is rejected and the next call starts another.
 */
export class ThreadCaller<C extends Calls<C>> {
  readonly #script: URL;
  readonly #data: ThreadData;
  readonly #waiting = new Map<number, Waiting>();
  #worker: Worker | null = null;
  #lastId = 0;
  #closed = false;

  constructor(script: URL, data: ThreadData) {
    this.#script = script;
    this.#data = data;
  }

  /** Rejects with `BookFailure`. */
  ask<K extends keyof C>(name: K, takes: C[K]['takes']): Promise<C[K]['gives']> {
    if (this.#closed) return Promise.reject(new BookFailure('other', bookWords.closed));
    const id = ++this.#lastId;
    return new Promise((resolve, reject) => {
      const call: Call<C, K> = { id, name, takes };
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread has no origin
      this.#started().postMessage(call);
      this.#waiting.set(id, { resolve, reject });
    });
  }

  get isRunning(): boolean {
    return this.#worker !== null;
  }

  /** Ends the thread; what it still owed is rejected. */
  async close(): Promise<void> {
    this.#closed = true;
    await this.#worker?.terminate();
  }

  #started(): Worker {
    if (this.#worker !== null) return this.#worker;
    const worker = new Worker(this.#script, { workerData: this.#data });
    worker.on('message', (answer: Answer) => this.#settle(answer));
    worker.on('error', (error) => this.#ended(worker, error.message));
    worker.on('exit', (code) => this.#ended(worker, `exit code ${code}`));
    this.#worker = worker;
    return worker;
  }

  #settle(answer: Answer): void {
    const waiting = this.#waiting.get(answer.id);
    this.#waiting.delete(answer.id);
    if (answer.ok) waiting?.resolve(answer.gives);
    else waiting?.reject(new BookFailure(answer.failure, answer.message));
  }

  #ended(worker: Worker, why: string): void {
    if (this.#worker !== worker) return;
    this.#worker = null;
    const owed = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of owed) reject(new BookFailure('other', bookWords.threadEnded(why)));
  }
}
