import type { FoundEntry } from './finding.ts';
import type { Entry, WatchInput } from './input.ts';
import { initialWatch, type WatchState } from './state.ts';
import { fold, resume, type Step } from './watch.ts';

/** Ticks fall on this grid of the watch's clock, ms. */
export const TICK_MS = 250;

/**
 * Brings a watch to `tMs`: a tick for each point of the grid that has passed. Live watching and replay both go through
 * here, so that ticks need not be stored.
 */
export function advance(before: WatchState, tMs: number): Step {
  let state = before;
  let found: readonly FoundEntry[] = [];
  for (let at = nextTickMs(state.tMs); at <= tMs; at += TICK_MS) {
    const step = fold(state, { kind: 'tick' }, state.seq + 1, at);
    state = step.state;
    if (step.found.length > 0) found = [...found, ...step.found];
  }
  return { state, found };
}

const nextTickMs = (tMs: number): number => (Math.floor(tMs / TICK_MS) + 1) * TICK_MS;

export interface TakeStep extends Step {
  readonly entry: Entry;
}

/** Takes one input in at `tMs`, after the ticks up to then, and numbers it. A time before the last one counts as that. */
export function take(before: WatchState, input: WatchInput, tMs: number): TakeStep {
  const ticked = advance(before, tMs);
  const entry = { seq: ticked.state.seq + 1, tMs: Math.max(tMs, ticked.state.tMs), input };
  const step = fold(ticked.state, input, entry.seq, entry.tMs);
  return {
    entry,
    state: step.state,
    found: ticked.found.length > 0 ? [...ticked.found, ...step.found] : step.found,
  };
}

export interface ReplayStep extends Step {
  /** The stored entry that was folded; null for the ticks after the last one. */
  readonly entry: Entry | null;
}

/**
 * Folds a stored session again: its first entry is `carried`. Yields after each entry, with the ticks that fell before
 * it; a last step brings the ticks up to `untilMs`.
 * @param exact whether the session was folded by this version, so that its whole carried state can be taken
 * @throws RangeError where the entries don't begin with `carried`, or are not the ones that were numbered so
 */
export function* replay(entries: Iterable<Entry>, untilMs: number, exact = true): Generator<ReplayStep> {
  let state = initialWatch(0, 0);
  let begun = false;
  for (const entry of entries) {
    if (!begun) {
      if (entry.input.kind !== 'carried')
        throw new RangeError('The session does not begin with what was carried into it.');
      state = resume(entry.input.carried, entry.seq, entry.tMs, exact);
      begun = true;
      yield { entry, state, found: [] };
      continue;
    }
    const step = take(state, entry.input, entry.tMs);
    if (step.entry.seq !== entry.seq) {
      throw new RangeError(
        `Input ${entry.seq} would be number ${step.entry.seq} in a replay: one before it is missing.`,
      );
    }
    state = step.state;
    yield { entry, state, found: step.found };
  }
  const last = advance(state, untilMs);
  yield { entry: null, ...last };
}
