import type { FoundEntry } from './finding.ts';
import type { Entry, WatchInput } from './input.ts';
import type { WatchState } from './state.ts';

/** Ticks fall on this grid of the watch's clock, ms. */
export const TICK_MS = 250;

export interface Advance {
  readonly state: WatchState;
  readonly found: readonly FoundEntry[];
}

/** signatures only for now; bodies follow */
export declare function advanceTo(state: WatchState, tMs: number): Advance;
export declare function take(state: WatchState, entry: Entry | { tMs: number; input: WatchInput }): Advance;
