import type { MotionLevels } from './check.ts';

export type Stillness = 'still' | 'moving' | 'unknown';

/** Whether an iron moves, as its line tells by a check that was done: plain data that survives JSON. */
export interface Motion {
  readonly is: Stillness;
  /** Since when it is that, as far as was seen, ms; null while unknown. */
  readonly sinceMs: number | null;
  /** What the last value taken for itself is, and since when the values have been that. */
  readonly says: Stillness;
  readonly saysSinceMs: number;
  /** When a value last came, ms; null before the first. */
  readonly heardMs: number | null;
}

export interface MotionHeard {
  readonly tMs: number;
  /** RMS acceleration with gravity taken out, g; null: no value came at this moment. */
  readonly motionG: number | null;
  /** Null: no check was done, and nothing is known. */
  readonly check: MotionLevels | null;
}

/** All of these are our own choices. Still only after this long: a stroke is at rest where it turns, ms. */
export const STILL_AFTER_MS = 1000;
/** Moving only after this long: a knock of the bench is over before, ms. */
export const MOVING_AFTER_MS = 300;
/** After so long without a value nothing is known, ms. */
export const MOTION_GAP_MS = 2500;

export const noMotion: Motion = {
  is: 'unknown',
  sinceMs: null,
  says: 'unknown',
  saysSinceMs: 0,
  heardMs: null,
};

/** What one value says: between the two levels it stays what it was. */
function stillness(check: MotionLevels, motionG: number, before: Stillness): Stillness {
  if (motionG <= check.stillG) return 'still';
  return motionG >= check.movingG ? 'moving' : before;
}

/** Takes in a value of the line, or a moment without one (a tick, or a line that carries none). */
export function stepMotion(before: Motion, { tMs, motionG, check }: MotionHeard): Motion {
  if (check === null) return before === noMotion || before.heardMs === null ? before : noMotion;
  const lost = before.heardMs !== null && tMs - before.heardMs > MOTION_GAP_MS;
  const known = lost ? noMotion : before;
  if (motionG === null || !Number.isFinite(motionG)) return known;
  const says = stillness(check, motionG, known.says);
  const saysSinceMs = says === known.says ? known.saysSinceMs : tMs;
  const heard = { ...known, says, saysSinceMs, heardMs: tMs };
  if (says === 'unknown' || says === known.is) return heard;
  const afterMs = says === 'still' ? STILL_AFTER_MS : MOVING_AFTER_MS;
  return tMs - saysSinceMs >= afterMs ? { ...heard, is: says, sinceMs: saysSinceMs } : heard;
}

/** Since when it has stood still, ms; null where it moves or nothing is known. */
export const stillSinceMs = ({ is, sinceMs }: Motion): number | null => (is === 'still' ? sinceMs : null);
