/**
 * Whether a number can be believed: against jumps, and against a value that has stopped following the plate.
 */

/** A change by more than this between two readings is a fault, K. */
export const JUMP_K = 50;
/** Readings after a jump that agree with one another this well are believed after all, K. */
const AGREE_K = 10;
/** This many readings that agree make the new level real. */
const AGREE_COUNT = 3;
/** After a gap of this length the plate may well have moved so far, ms (50 K at 2 K/s). */
const GAP_MS = 25_000;

export interface Level {
  readonly plateC: number;
  readonly tMs: number;
  /** Readings at a new level that is not believed yet. */
  readonly doubted: { readonly plateC: number; readonly count: number } | null;
}

/** Judges one more reading: is it a jump, and what is the level after it. */
export function judgeJump(
  level: Level | null,
  plateC: number,
  tMs: number,
): { readonly level: Level; readonly jump: boolean } {
  const settled = { level: { plateC, tMs, doubted: null }, jump: false };
  if (level === null || tMs - level.tMs > GAP_MS) return settled;
  if (Math.abs(plateC - level.plateC) <= JUMP_K) return settled;
  const agrees = level.doubted !== null && Math.abs(plateC - level.doubted.plateC) <= AGREE_K;
  const count = agrees && level.doubted !== null ? level.doubted.count + 1 : 1;
  if (count >= AGREE_COUNT) return settled;
  return { level: { ...level, doubted: { plateC, count } }, jump: true };
}

export interface Held {
  readonly value: number;
  readonly sinceMs: number;
  /** How long the value before this one lasted, ms; null while none has changed. */
  readonly beforeMs: number | null;
  /** The smallest change seen, which is no smaller than the probe's resolution, K. */
  readonly resolutionK: number | null;
}

/** A step at least this large is a coarse probe's, K. */
const COARSE_K = 0.25;
const FROZEN_FINE_MS = 20_000;
const FROZEN_COARSE_MS = 60_000;
/** A value that lasts this many times as long as the one before it, while heat was changing, is stuck. */
const FROZEN_TIMES = 30;

/** Follows how long the very same value has been sent. */
export function hold(held: Held | null, value: number, tMs: number): Held {
  if (held === null) return { value, sinceMs: tMs, beforeMs: null, resolutionK: null };
  if (value === held.value) return held;
  const step = Math.abs(value - held.value);
  return {
    value,
    sinceMs: tMs,
    beforeMs: tMs - held.sinceMs,
    resolutionK: held.resolutionK === null ? step : Math.min(step, held.resolutionK),
  };
}

/**
 * True once the value has stood still for longer than resolution and the pace of change before it explain. A device
 * that counts whole degrees on a steady iron repeats itself honestly, and one that never changed is never judged.
 */
export function isFrozen(held: Held | null, tMs: number): boolean {
  if (held === null || held.beforeMs === null || held.resolutionK === null) return false;
  const leastMs = held.resolutionK < COARSE_K ? FROZEN_FINE_MS : FROZEN_COARSE_MS;
  return tMs - held.sinceMs > Math.max(leastMs, FROZEN_TIMES * held.beforeMs);
}
