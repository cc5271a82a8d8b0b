/** The daemon's clocks. A watch's time is whole milliseconds since the daemon started and never goes back. */
export interface Clock {
  /** Whole milliseconds since the daemon started, monotonic. */
  nowMs(): number;
}

/** Follows the machine's monotonic clock. */
export function monotonicClock(): Clock {
  const originMs = performance.now();
  return { nowMs: () => Math.floor(performance.now() - originMs) };
}

/**
 * Goes only as far as it is pushed. A simulated iron that runs faster than life pushes it from line to line, so
 * that a stalled host stalls the simulated world too instead of making its probe look silent.
 */
export class SteppedClock implements Clock {
  #nowMs = 0;

  nowMs(): number {
    return this.#nowMs;
  }

  /** Pushes the clock to `ms`; a time before now leaves it where it is. */
  advanceTo(ms: number): void {
    this.#nowMs = Math.max(this.#nowMs, Math.floor(ms));
  }
}
