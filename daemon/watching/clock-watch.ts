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

/** What happened between two looks at the machine's clocks; nothing where they kept together, both where it woke to be set. */
export function clockChanges(before: ClockReadings, after: ClockReadings): readonly ClockChange[] {
  const passedMs = after.monotonicMs - before.monotonicMs;
  const apartMs = after.uptimeMs - before.uptimeMs - passedMs;
  const sleptMs = apartMs > APART_MS ? apartMs : 0;
  const steppedMs = after.wallMs - before.wallMs - passedMs - sleptMs;
  const sinceBootMs = after.uptimeMs;
  const changes: readonly ClockChange[] = [
    { change: 'suspend', byMs: Math.round(sleptMs), sinceBootMs },
    { change: 'step', byMs: Math.round(steppedMs), sinceBootMs },
  ];
  return changes.filter(({ byMs }) => Math.abs(byMs) > APART_MS);
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
    const changes = clockChanges(this.#before, after);
    this.#before = after;
    for (const change of changes) this.#onChange(change);
  }
}
