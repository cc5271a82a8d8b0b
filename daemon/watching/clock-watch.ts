import { uptime } from 'node:os';

export interface ClockReadings {
  readonly monotonicMs: number;
  readonly wallMs: number;
  /** Time since the machine was started, suspension included, ms. */
  readonly uptimeMs: number;
}

export interface ClockChange {
  readonly change: 'step' | 'suspend';
  readonly byMs: number;
}

/** Clocks that come apart by less than this are let be: slewing and rounding (uptime counts in 10 ms), ms. */
const APART_MS = 2000;

/** What happened between two looks at the machine's clocks; null where they kept together. */
export function clockChange(before: ClockReadings, after: ClockReadings): ClockChange | null {
  const passedMs = after.monotonicMs - before.monotonicMs;
  const sleptMs = after.uptimeMs - before.uptimeMs - passedMs;
  if (sleptMs > APART_MS) return { change: 'suspend', byMs: Math.round(sleptMs) };
  const steppedMs = after.wallMs - before.wallMs - passedMs;
  return Math.abs(steppedMs) > APART_MS ? { change: 'step', byMs: Math.round(steppedMs) } : null;
}

const readClocks = (): ClockReadings => ({
  monotonicMs: performance.now(),
  wallMs: Date.now(),
  uptimeMs: uptime() * 1000,
});

/** Coats are held against the wall clock every second: one that was set has to be seen by then. */
const LOOK_MS = 1000;

/** Looks at the machine's clocks now and then; returns the timer. */
export function watchClocks(onChange: (change: ClockChange) => void): NodeJS.Timeout {
  let before = readClocks();
  return setInterval(() => {
    const after = readClocks();
    const change = clockChange(before, after);
    before = after;
    if (change !== null) onChange(change);
  }, LOOK_MS);
}
