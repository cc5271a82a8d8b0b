import type { ShopEntry } from '../../shared/shop/entry.ts';
import { type Book, BookFailure, type BookFailureCause, type Commit, type OpenedBook } from '../book/book.ts';
import type { KeepOutcome } from './recorder.ts';

export interface Keeping {
  readonly kept: boolean;
  /** Why nothing is kept, as a sentence; empty while all is. */
  readonly detail: string;
}

const RETRY_MS = 3000;

/** After these a session went aside with its book, or can't be added to: only a new one can be kept. */
const lost: ReadonlySet<BookFailureCause> = new Set(['damaged', 'session-broken']);

/**
 * Keeps trying to keep: opens the book, tries again where it can't, and tells when keeping stops or goes on. Watching
 * never waits for it.
 */
export class Keeper {
  #keeping: Keeping = { kept: true, detail: '' };
  #opened = false;
  #committed = false;
  #closed = false;
  #retry: NodeJS.Timeout | null = null;
  readonly #book: Book;
  readonly #onOpen: (opened: OpenedBook) => void;
  readonly #onChange: (keeping: Keeping) => void;

  constructor(book: Book, onOpen: (opened: OpenedBook) => void, onChange: (keeping: Keeping) => void) {
    this.#book = book;
    this.#onOpen = onOpen;
    this.#onChange = onChange;
  }

  /** Opens the book; where that fails it is tried again every few seconds. Never rejects. */
  async open(): Promise<void> {
    const opened = await this.#tryToOpen();
    if (opened !== null) this.#onOpen(opened);
    if (!this.#keeping.kept) this.#openLater();
  }

  async #tryToOpen(): Promise<OpenedBook | null> {
    try {
      const opened = await this.#book.open();
      this.#opened = true;
      this.#set({ kept: opened.notKept === null, detail: opened.notKept?.message ?? '' });
      return opened;
    } catch (error) {
      this.#set({ kept: false, detail: reasonOf(error) });
      return null;
    }
  }

  /** While nothing is recorded no commit finds out that keeping works again. Once one has, opening would end its session. */
  #openLater(): void {
    this.#retry = setTimeout(() => {
      if (!this.#committed && !this.#closed) void this.open();
    }, RETRY_MS);
  }

  /** One commit of a session; never rejects. */
  async commit(commit: Commit): Promise<KeepOutcome> {
    if (!this.#opened) return 'not-yet';
    this.#committed = true;
    try {
      await this.#book.commit(commit);
      this.#set({ kept: true, detail: '' });
      return 'kept';
    } catch (error) {
      this.#set({ kept: false, detail: reasonOf(error) });
      return error instanceof BookFailure && lost.has(error.failure) ? 'never' : 'not-yet';
    }
  }

  /** An entry of the shop's journal. Rejects where it can't be kept, which is told like any other. */
  async addShopEntry(entry: ShopEntry): Promise<ShopEntry> {
    try {
      const kept = await this.#book.addShopEntry(entry);
      if (this.#opened) this.#set({ kept: true, detail: '' });
      return kept;
    } catch (error) {
      this.#set({ kept: false, detail: reasonOf(error) });
      throw error;
    }
  }

  async close(): Promise<void> {
    this.#closed = true;
    if (this.#retry !== null) clearTimeout(this.#retry);
    await this.#book.close();
  }

  #set(keeping: Keeping): void {
    if (keeping.kept === this.#keeping.kept && keeping.detail === this.#keeping.detail) return;
    this.#keeping = keeping;
    this.#onChange(keeping);
  }
}

const reasonOf = (error: unknown): string => (error instanceof BookFailure ? error.message : String(error));
