import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type {
  BookFailureCause,
  Commit,
  ItemClosing,
  OpenedBook,
  SessionSummary,
  ShopRecord,
  SuspectItem,
  TraceAsked,
  TraceRead,
  Verification,
} from '../book.ts';

/** What passes between the main thread and the two that work on the book's file: calls one way, answers the other. */

/** Of a call by name: what it takes and what it gives. */
export type Calls<C> = { [K in keyof C]: { readonly takes: object; readonly gives: unknown } };

export interface WriterCalls {
  readonly open: { readonly takes: { readonly nowUtcMs: number }; readonly gives: OpenedBook };
  readonly commit: {
    readonly takes: { readonly commit: Commit; readonly nowUtcMs: number };
    readonly gives: null;
  };
  readonly closeItem: { readonly takes: { readonly closing: ItemClosing }; readonly gives: ItemClosing };
  readonly addNote: { readonly takes: { readonly note: PieceNote }; readonly gives: PieceNote };
  readonly addShopEntry: { readonly takes: { readonly entry: ShopEntry }; readonly gives: ShopEntry };
  readonly close: { readonly takes: object; readonly gives: null };
}

interface OfSession {
  readonly session: string;
}
interface OfStream {
  /** A number that the caller chose. */
  readonly stream: number;
}

export interface ReaderCalls {
  readonly sessions: { readonly takes: object; readonly gives: readonly SessionSummary[] };
  readonly session: { readonly takes: OfSession; readonly gives: SessionSummary | null };
  readonly findings: { readonly takes: OfSession; readonly gives: readonly FoundEntry[] };
  readonly verify: { readonly takes: OfSession; readonly gives: Verification };
  readonly trace: {
    readonly takes: OfSession & { readonly asked: TraceAsked };
    readonly gives: TraceRead;
  };
  readonly shop: { readonly takes: object; readonly gives: ShopRecord };
  readonly items: { readonly takes: object; readonly gives: readonly SuspectItem[] };
  /** Begins a stream of CSV. */
  readonly csvBegin: { readonly takes: OfStream & OfSession; readonly gives: null };
  /** The next chunk, null after the last. */
  readonly csvNext: { readonly takes: OfStream; readonly gives: string | null };
  /** Ends a stream before its end. */
  readonly csvStop: { readonly takes: OfStream; readonly gives: null };
}

export interface Call<C extends Calls<C>, K extends keyof C = keyof C> {
  readonly id: number;
  readonly name: K;
  readonly takes: C[K]['takes'];
}

export type Answer =
  | { readonly id: number; readonly ok: true; readonly gives: unknown }
  | { readonly id: number; readonly ok: false; readonly failure: BookFailureCause; readonly message: string };

/** What both threads are told at their start. */
export interface ThreadData {
  readonly folder: string;
}
