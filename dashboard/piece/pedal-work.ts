/**
 * What a pedal's press says of the work. The first counts at once, since nothing is held back that a plate may be waiting
 * for. A second one soon after means "undo the last mark", as a double press of the device's button does: the first has
 * marked something by then, so that is taken back too. A press that answered an alarm has marked nothing.
 */

/** Two presses that are no further apart are one double press, ms. */
export const DOUBLE_MS = 400;

/** The press before: null where there was none, or where it was the second of a double one. */
export interface Pressed {
  readonly atMs: number;
  /** The "next" that it said; null: it answered an alarm, or there was nothing to mark on. */
  readonly next: string | null;
}

export interface PedalActs {
  /** Answers the first alarm that can be; false where there is none. */
  readonly answerAlarm: () => boolean;
  /** Says "next" and gives its id; null where no piece is in hand. */
  readonly next: () => string | null;
  readonly undoNext: (commandId: string) => void;
  readonly undo: () => void;
}

/** @returns what the next press has to know of this one */
export function pressed(before: Pressed | null, atMs: number, acts: PedalActs): Pressed | null {
  if (before !== null && atMs - before.atMs <= DOUBLE_MS) {
    if (before.next !== null) acts.undoNext(before.next);
    acts.undo();
    return null;
  }
  return { atMs, next: acts.answerAlarm() ? null : acts.next() };
}
