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
  /** How long the machine had been running then, ms. */
  readonly sinceBootMs: number;
}

/** Clocks that come apart by less than this are let be: slewing and rounding (uptime counts in 10 ms), ms. */
const APART_MS = 2000;

/** What happened between two looks at the machine's clocks; null where they kept together. */
export function clockChange(before: ClockReadings, after: ClockReadings): ClockChange | null {
  const passedMs = after.monotonicMs - before.monotonicMs;
  const sleptMs = after.uptimeMs - before.uptimeMs - passedMs;
  const sinceBootMs = after.uptimeMs;
  if (sleptMs > APART_MS) return { change: 'suspend', byMs: Math.round(sleptMs), sinceBootMs };
  const steppedMs = after.wallMs - before.wallMs - passedMs;
  return Math.abs(steppedMs) > APART_MS ? { change: 'step', byMs: Math.round(steppedMs), sinceBootMs } : null;
}

const readClocks = (): ClockReadings => ({
  monotonicMs: performance.now(),
  wallMs: Date.now(),
  uptimeMs: uptime() * 1000,
});

/** Looks at the machine's clocks when it is asked to, and tells what happened since it last did. */
export class ClockWatch {
  readonly #onChange: (change: ClockChange) => void;
  #before = readClocks();

  constructor(onChange: (change: ClockChange) => void) {
    this.#onChange = onChange;
  }

  look(): void {
    const after = readClocks();
    const change = clockChange(this.#before, after);
    this.#before = after;
    if (change !== null) this.#onChange(change);
  }
}
