import type { Timers } from '../../../../daemon/web/stream/timers.ts';

/** Time that goes on only when a test says so. */
export class ManualTimers implements Timers {
  #nowMs = 1_000_000;
  readonly #due = new Set<{ atMs: number; readonly everyMs: number | null; readonly run: () => void }>();

  nowMs(): number {
    return this.#nowMs;
  }

  after(ms: number, run: () => void): () => void {
    return this.#add({ atMs: this.#nowMs + Math.ceil(ms), everyMs: null, run });
  }

  every(ms: number, run: () => void): () => void {
    return this.#add({ atMs: this.#nowMs + ms, everyMs: ms, run });
  }

  get pending(): number {
    return this.#due.size;
  }

  /** Lets `ms` pass, running what falls due, in order. */
  advance(ms: number): void {
    const untilMs = this.#nowMs + ms;
    for (;;) {
      const next = [...this.#due].sort((a, b) => a.atMs - b.atMs)[0];
      if (next === undefined || next.atMs > untilMs) break;
      this.#nowMs = Math.max(this.#nowMs, next.atMs);
      if (next.everyMs === null) this.#due.delete(next);
      else next.atMs += next.everyMs;
      next.run();
    }
    this.#nowMs = untilMs;
  }

  #add(timer: { atMs: number; readonly everyMs: number | null; readonly run: () => void }): () => void {
    this.#due.add(timer);
    return () => this.#due.delete(timer);
  }
}
