import { type Trace, traceSchema } from '../../shared/messages/trace.ts';
import type { View } from '../chart/view.ts';
import { getJson } from '../link/get.ts';

export interface TraceTold {
  trace(trace: Trace): void;
  /** It could not be had, and is tried again. */
  failed(why: string): void;
}

interface Wanted {
  /** Null: the whole session. */
  readonly view: View | null;
  readonly points: number;
}

/** A session that runs is asked for again after so long, ms. */
const GROWS_MS = 3000;
const RETRY_MS = 3000;

/**
 * Fetches the trace of a session, one request at a time: for the newest span that was wanted, again and again until all
 * of it has been worked out, and every few seconds while the session runs.
 */
export class TraceFeed {
  readonly #path: string;
  readonly #told: TraceTold;
  readonly #runs: () => boolean;
  readonly #end = new AbortController();
  #wanted: Wanted | null = null;
  #asking = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** @param runs whether the session may still grow */
  constructor(session: string, told: TraceTold, runs: () => boolean) {
    this.#path = `/api/sessions/${encodeURIComponent(session)}/trace`;
    this.#told = told;
    this.#runs = runs;
  }

  want(view: View | null, points: number): void {
    this.#wanted = { view, points };
    if (!this.#asking) void this.#ask();
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#end.abort();
  }

  async #ask(): Promise<void> {
    clearTimeout(this.#timer);
    this.#asking = true;
    for (let wanted = this.#wanted; wanted !== null && !this.#end.signal.aborted; ) {
      const got = await getJson(this.#path + queryOf(wanted), traceSchema, this.#end.signal);
      if (this.#end.signal.aborted) break;
      if (!got.ok) {
        this.#told.failed(got.why);
        this.#later(RETRY_MS);
        break;
      }
      this.#told.trace(got.value);
      const done = wanted === this.#wanted && got.value.complete;
      if (done && this.#runs()) this.#later(GROWS_MS);
      wanted = done ? null : this.#wanted;
    }
    this.#asking = false;
  }

  #later(afterMs: number): void {
    this.#timer = setTimeout(() => void this.#ask(), afterMs);
  }
}

function queryOf({ view, points }: Wanted): string {
  const span = view === null ? '' : `&from=${Math.floor(view.fromMs)}&to=${Math.ceil(view.toMs)}`;
  return `?points=${points}${span}`;
}
