import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Entry, WatchInput } from '../../shared/watch/input.ts';
import { advance, take } from '../../shared/watch/replay.ts';
import type { WatchState } from '../../shared/watch/state.ts';

/** What one step of a watch took and gave; `entry` is null for ticks alone. */
export interface WatchStep {
  readonly entry: Entry | null;
  readonly found: readonly FoundEntry[];
  readonly before: WatchState;
  readonly after: WatchState;
}

/** A session begins with this much of what came before it, ms; what the one before holds is not held again. */
const KEPT_MS = 120_000;

/**
 * The live watch of one iron: it holds the state, orders the inputs and remembers the last two minutes, with which a
 * session begins.
 */
export class Watcher {
  #state: WatchState;
  #recent: WatchStep[] = [];
  readonly #told: (step: WatchStep) => void;

  constructor(state: WatchState, told: (step: WatchStep) => void) {
    this.#state = state;
    this.#told = told;
  }

  get state(): WatchState {
    return this.#state;
  }

  /** The steps of the last two minutes, oldest first. */
  get recent(): readonly WatchStep[] {
    const oldest = this.#state.tMs - KEPT_MS;
    return this.#recent.filter((s) => s.after.tMs >= oldest);
  }

  /** Forgets what came so far: a session that begins from here on does not hold what the last one holds. */
  forget(): void {
    this.#recent = [];
  }

  /** Goes on from another state, at the same point of its clock. */
  goOnFrom(state: WatchState): void {
    this.#state = state;
    this.forget();
  }

  /** Takes one input in, after the ticks that fell before it. */
  take(input: WatchInput, tMs: number): WatchStep {
    const before = this.#state;
    const { entry, state, found } = take(before, input, tMs);
    return this.#step({ entry, found, before, after: state });
  }

  /** Lets time go on to `tMs`. */
  advance(tMs: number): void {
    const before = this.#state;
    const { state, found } = advance(before, tMs);
    if (state !== before) this.#step({ entry: null, found, before, after: state });
  }

  #step(step: WatchStep): WatchStep {
    this.#state = step.after;
    this.#recent.push(step);
    const oldest = step.after.tMs - KEPT_MS;
    // Half as much again before trimming, so that the array is not moved at every step.
    if ((this.#recent[0]?.after.tMs ?? oldest) < oldest - KEPT_MS / 2) {
      this.#recent = this.#recent.filter((s) => s.after.tMs >= oldest);
    }
    this.#told(step);
    return step;
  }
}
