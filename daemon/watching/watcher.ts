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

/** The live watch of one iron: it holds the state and orders the inputs. */
export class Watcher {
  #state: WatchState;
  readonly #told: (step: WatchStep) => void;

  constructor(state: WatchState, told: (step: WatchStep) => void) {
    this.#state = state;
    this.#told = told;
  }

  get state(): WatchState {
    return this.#state;
  }

  /** Goes on from another state, at the same point of its clock. */
  goOnFrom(state: WatchState): void {
    this.#state = state;
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
    this.#told(step);
    return step;
  }
}
