/**
 * Whether a number can be believed: against jumps, and against a value that has stopped following the plate.
 */

/** A change by more than this between two readings is a fault, K. */
export const JUMP_K = 50;
/** Readings after a jump that agree with one another this well, so many and for so long, are believed after all. */
const AGREE_K = 10;
const AGREE_COUNT = 3;
const AGREE_MS = 3000;
/** After a gap of this length the plate may well have moved so far, ms (50 K at 2 K/s). */
const GAP_MS = 25_000;

export interface Level {
  readonly plateC: number;
  readonly tMs: number;
  /** Readings at a new level that is not believed yet. */
  readonly doubted: { readonly plateC: number; readonly count: number; readonly sinceMs: number } | null;
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
  const known = level.doubted;
  const doubted =
    known !== null && Math.abs(plateC - known.plateC) <= AGREE_K
      ? { plateC, count: known.count + 1, sinceMs: known.sinceMs }
      : { plateC, count: 1, sinceMs: tMs };
  if (doubted.count >= AGREE_COUNT && tMs - doubted.sinceMs >= AGREE_MS) return settled;
  return { level: { ...level, doubted }, jump: true };
}

export interface Held {
  readonly value: number;
  readonly sinceMs: number;
  /** How fast the plate's heat was changing when this value came, K/s; null where that was not known. */
  readonly paceKPerS: number | null;
  /** The smallest change seen, which is no smaller than the probe's resolution, K; null while none was. */
  readonly resolutionK: number | null;
}

/** Follows how long the very same value has been sent. */
export function hold(held: Held | null, value: number, tMs: number, slopeKPerS: number | null): Held {
  if (held === null) return { value, sinceMs: tMs, paceKPerS: null, resolutionK: null };
  if (value === held.value) return held;
  const step = Math.abs(value - held.value);
  return {
    value,
    sinceMs: tMs,
    paceKPerS: slopeKPerS === null ? null : Math.abs(slopeKPerS),
    resolutionK: held.resolutionK === null ? step : Math.min(step, held.resolutionK),
  };
}

/** A plate that changed by less than this may have come to rest, K/s. */
const MOVING_K_PER_S = 0.2;
const FROZEN_MS = 10_000;
/**
 * At its earlier pace the plate would have gone this far by now, in steps of the probe and in K. At the turns of 300
 * simulated thermostats a value stood for 25 steps of it at most (a quick rise with a slow fall after it).
 */
const FROZEN_STEPS = 40;
const FROZEN_K = 6;

/**
 * True once the very same value has stood for so long that, at the pace at which heat was changing when it came, the
 * plate must have passed many of the probe's steps. A device that counts whole degrees on a steady iron repeats itself
 * honestly; one that stops in the middle of a rise doesn't. At a thermostat's turn a coarse value stands for a while
 * too, but it came slowly there.
 */
export function isFrozen(held: Held | null, tMs: number): boolean {
  if (held === null || held.paceKPerS === null || held.resolutionK === null) return false;
  if (held.paceKPerS < MOVING_K_PER_S) return false;
  const forMs = tMs - held.sinceMs;
  const passedK = (held.paceKPerS * forMs) / 1000;
  return forMs >= FROZEN_MS && passedK >= Math.max(FROZEN_K, FROZEN_STEPS * held.resolutionK);
}
