import type { Place } from '../place.ts';
import { type Motion, stillSinceMs } from './motion.ts';

/** Rest on one spot, and which iron is in hand, as far as motion tells. */

export interface RestFacts {
  readonly tMs: number;
  /** Whether the plate may harm the cloth. */
  readonly hot: boolean;
  /** By the user's marks. */
  readonly place: Place;
  /** Whether this iron was taken up, by a mark or by how it moved; null: nobody knows. */
  readonly inHand: boolean | null;
  /** When it was last said, or seen, that it is there or in hand, ms: it may have stood on its rest until then. */
  readonly thereFromMs: number;
}

/**
 * How long an iron has rested on one spot of the work, ms; 0 where it does not, null where that is not measured: its
 * motion is unknown, or nothing tells whether it is on the work. An iron in hand that was marked nowhere is taken to be
 * on the work: by motion alone one that was put on its rest without a word looks the same.
 */
export function restOnSpotMs(
  motion: Motion,
  { tMs, hot, place, inHand, thereFromMs }: RestFacts,
): number | null {
  if (!hot || place === 'on-rest' || place === 'off-work') return 0;
  if (motion.is === 'unknown') return null;
  if (place === 'unknown' && inHand !== true) return inHand === null ? null : 0;
  const sinceMs = stillSinceMs(motion);
  return sinceMs === null ? 0 : Math.max(0, tMs - Math.max(sinceMs, thereFromMs));
}

/** An iron that has moved for so long, while no other does, is in hand, ms (our own choice). */
const IN_HAND_AFTER_MS = 3000;

/**
 * The iron in hand by motion; the one that was before as long as nothing tells otherwise.
 * @param motions of all irons that have a motion value, by their ids
 */
export function inHandByMotion(
  motions: Readonly<Record<string, Motion>>,
  tMs: number,
  before: string | null,
): string | null {
  const moving = Object.entries(motions).filter(([, m]) => m.is === 'moving');
  const [one] = moving;
  if (one === undefined || moving.length > 1) return before;
  const [iron, { sinceMs }] = one;
  return sinceMs !== null && tMs - sinceMs >= IN_HAND_AFTER_MS ? iron : before;
}
