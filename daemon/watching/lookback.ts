import type { WatchState } from '../../shared/watch/state.ts';
import { type KeptStep, keptOf } from './kept-step.ts';
import type { WatchStep } from './watcher.ts';

/** A session begins with this much of what came before it, ms. */
const KEPT_MS = 120_000;
/** What came is dropped in stretches of this length, ms: only the state at the start of each has to be remembered. */
const STRETCH_MS = 500;

interface Stretch {
  readonly from: WatchState;
  readonly steps: KeptStep[];
  untilMs: number;
}

/** What a session begins with: the state at its beginning, and what came from there to now. */
export interface Past {
  readonly from: WatchState;
  readonly steps: readonly KeptStep[];
}

/** The last two minutes of a watch that is not being recorded. */
export class Lookback {
  #stretches: Stretch[] = [];

  add(step: WatchStep): void {
    const { tMs } = step.after;
    let last = this.#stretches.at(-1);
    if (last === undefined || tMs - last.from.tMs >= STRETCH_MS) {
      last = { from: step.before, steps: [], untilMs: tMs };
      this.#stretches.push(last);
      this.#stretches = this.#stretches.filter((s) => s.untilMs >= tMs - KEPT_MS);
    }
    last.untilMs = tMs;
    const kept = keptOf(step);
    if (kept !== null) last.steps.push(kept);
  }

  /** Gives what is remembered, and forgets it: the next session does not hold it again. */
  take(now: WatchState): Past {
    const from = this.#stretches[0]?.from ?? now;
    const steps = this.#stretches.flatMap((s) => s.steps);
    this.#stretches = [];
    return { from, steps };
  }
}
