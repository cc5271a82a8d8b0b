import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { Book } from '../../book/book.ts';

/** What could not be written is tried again after so long, ms. */
const RETRY_MS = 5000;

export interface JournalParts {
  readonly book: Pick<Book, 'addShopEntry'>;
  readonly complain: (message: string, error: unknown) => void;
}

/**
 * Writes what happens in the shop to the book, in its order. What can't be written waits and is tried again: clocks run
 * whether the disk is full or not.
 */
export class Journal {
  readonly #parts: JournalParts;
  #waiting: readonly ShopEntry[] = [];
  #writing: Promise<void> | null = null;
  #retry: NodeJS.Timeout | null = null;
  #ended = false;

  constructor(parts: JournalParts) {
    this.#parts = parts;
  }

  /** Gives whether it is in the book by now. Never rejects. */
  async keep(entry: ShopEntry): Promise<boolean> {
    this.#waiting = [...this.#waiting, entry];
    // What is being written may fail before this one's turn: whether it was kept shows in what waits.
    while (this.#writing !== null) await this.#writing;
    if (this.#retry === null) await this.#write();
    return !this.#waiting.includes(entry);
  }

  /** Tries what waits once more, and lets go. */
  async close(): Promise<void> {
    this.#ended = true;
    if (this.#retry !== null) clearTimeout(this.#retry);
    this.#retry = null;
    await this.#write();
  }

  #write(): Promise<void> {
    this.#writing ??= this.#writeAll().finally(() => {
      this.#writing = null;
    });
    return this.#writing;
  }

  async #writeAll(): Promise<void> {
    for (let entry = this.#waiting[0]; entry !== undefined; entry = this.#waiting[0]) {
      try {
        // oxlint-disable-next-line eslint/no-await-in-loop -- one after the other: their order is what counts
        await this.#parts.book.addShopEntry(entry);
      } catch (error) {
        this.#parts.complain('What happened in the shop could not be written.', error);
        this.#tryLater();
        return;
      }
      this.#waiting = this.#waiting.slice(1);
    }
  }

  #tryLater(): void {
    if (this.#ended) return;
    this.#retry = setTimeout(() => {
      this.#retry = null;
      void this.#write();
    }, RETRY_MS);
    this.#retry.unref();
  }
}
