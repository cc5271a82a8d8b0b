import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Entry } from '../../../shared/watch/input.ts';
import { advance, take } from '../../../shared/watch/replay.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { type Course, samplesOf } from './inputs.ts';

/** One input as it was taken live, with what was found at it and at the ticks since the one before. */
export interface Taken {
  readonly entry: Entry;
  readonly found: readonly FoundEntry[];
  /** The state after it. */
  readonly state: WatchState;
}

export interface Lived {
  readonly taken: readonly Taken[];
  /** Found at the ticks after the last input. */
  readonly last: readonly FoundEntry[];
  readonly state: WatchState;
  readonly untilMs: number;
}

export const foundBy = ({ taken, last }: Lived): readonly FoundEntry[] => [
  ...taken.flatMap((t) => t.found),
  ...last,
];

/**
 * Runs a course live.
 * @param between what is done with the state between two steps
 */
export function live(
  course: readonly Course[],
  from: WatchState,
  between: (state: WatchState) => WatchState = (s) => s,
): Lived {
  let state = from;
  let nowMs = from.tMs;
  let ticked: FoundEntry[] = [];
  const taken: Taken[] = [];
  const give = (input: Entry['input'], waitMs: number): void => {
    nowMs = Math.max(0, nowMs + waitMs);
    const step = take(between(state), input, nowMs);
    state = step.state;
    taken.push({ entry: step.entry, found: [...ticked, ...step.found], state });
    ticked = [];
  };
  for (const step of course) {
    switch (step.do) {
      case 'advance': {
        nowMs += step.byMs;
        const ticks = advance(between(state), nowMs);
        state = ticks.state;
        ticked.push(...ticks.found);
        break;
      }
      case 'give':
        give(step.input, step.waitMs);
        break;
      case 'read':
        for (const { waitMs, sample } of samplesOf(step.run)) give({ kind: 'sample', sample }, waitMs);
    }
  }
  const untilMs = Math.max(nowMs, state.tMs) + 3000;
  const end = advance(between(state), untilMs);
  return { taken, last: [...ticked, ...end.found], state: end.state, untilMs };
}
