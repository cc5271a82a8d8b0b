import type { FoundEntry } from './finding.ts';
import type { Entry } from './input.ts';
import type { WatchState } from './state.ts';

export interface Step {
  readonly state: WatchState;
  readonly found: readonly FoundEntry[];
}

/**
 * Folds a stored session again: its first entry is `carried`. Yields, after each stored entry (with the ticks that
 * fell before it), the state and the findings; a last step brings the ticks up to `untilMs`.
 */
export declare function replay(
  entries: Iterable<Entry>,
  untilMs: number,
): Generator<Step & { entry: Entry | null }>;
