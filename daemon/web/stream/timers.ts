/** Time as the stream needs it: the machine's own, never a watch's, which may run faster. */
export interface Timers {
  /** Monotonic, ms. */
  nowMs(): number;
  /** Runs once, `ms` from now; returns what calls it off. */
  after(ms: number, run: () => void): () => void;
  /** Runs every `ms`; returns what ends it. */
  every(ms: number, run: () => void): () => void;
}

/** The machine's timers. They don't keep the process alive. */
export const systemTimers = (nowMs: () => number): Timers => ({
  nowMs,
  after(ms, run) {
    const timer = setTimeout(run, Math.ceil(ms)).unref();
    return () => clearTimeout(timer);
  },
  every(ms, run) {
    const timer = setInterval(run, ms).unref();
    return () => clearInterval(timer);
  },
});
