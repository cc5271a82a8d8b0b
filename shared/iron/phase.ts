import { COLD_C } from '../thermometer/thermometer.ts';
import { HOT_C } from './heat.ts';

/** What the plate is doing as a whole. */
export const ironPhases = ['unknown', 'cold', 'warming', 'regulating', 'cooling'] as const;
export type IronPhase = (typeof ironPhases)[number];

/**
 * A plate this far over its own peaks and still rising, or under its own troughs and still falling, is no longer
 * regulated where it was, K (our own choice: under the 28 K, 50 degF, between two usual stages, over what work draws).
 */
const BEYOND_SWING_K = 12;
/** Before a trough is known, one this far under the last peak, K (our own choice: wider than any swing listed). */
const BELOW_PEAK_K = 45;
/**
 * A plate that has stayed within 2 K for so long is held there. A plate that cools does so too, near the end: from 60
 * degC it takes two minutes for the last 2 K, but only under 43 degC as long as ten.
 */
const HELD_K = 2;
const HELD_WARMING_MS = 120_000;
const HELD_COOLING_MS = 600_000;

export interface PhaseFacts {
  readonly plateC: number;
  readonly tMs: number;
  readonly turn: 'peak' | 'trough' | null;
  readonly direction: 'rising' | 'falling' | 'unknown';
  /** Of the thermostat as it is set, as far as they are known, degC. */
  readonly lowestTroughC: number | null;
  readonly highestPeakC: number | null;
  readonly lastPeakC: number | null;
  /** Since when the plate has stayed within a few kelvins. */
  readonly heldSinceMs: number;
}

/** The phase after one more reading. */
export function nextPhase(phase: IronPhase, facts: PhaseFacts): IronPhase {
  const { plateC, direction } = facts;
  if (plateC < COLD_C) return 'cold';
  switch (phase) {
    case 'cold':
      // Not at once, so that a plate at the edge doesn't flutter.
      return plateC < HOT_C ? 'cold' : 'warming';
    case 'unknown':
      if (direction === 'unknown') return hasHeld(facts, HELD_COOLING_MS) ? 'regulating' : 'unknown';
      return direction === 'rising' ? 'warming' : 'cooling';
    case 'warming':
      return facts.turn === 'peak' || hasHeld(facts, HELD_WARMING_MS) ? 'regulating' : 'warming';
    case 'cooling':
      if (facts.turn === 'trough') return 'warming';
      return hasHeld(facts, HELD_COOLING_MS) ? 'regulating' : 'cooling';
    case 'regulating':
      if (hasRisen(facts)) return 'warming';
      return hasDropped(facts) ? 'cooling' : 'regulating';
  }
}

const hasHeld = ({ tMs, heldSinceMs }: PhaseFacts, forMs: number): boolean => tMs - heldSinceMs >= forMs;

const hasRisen = ({ direction, plateC, highestPeakC }: PhaseFacts): boolean =>
  direction === 'rising' && highestPeakC !== null && plateC > highestPeakC + BEYOND_SWING_K;

function hasDropped({ direction, plateC, lowestTroughC, lastPeakC }: PhaseFacts): boolean {
  if (direction !== 'falling') return false;
  if (lowestTroughC !== null) return plateC < lowestTroughC - BEYOND_SWING_K;
  return lastPeakC !== null && plateC < lastPeakC - BELOW_PEAK_K;
}

/** Whether a plate has left the few kelvins in which it counts as held. */
export const hasMoved = (plateC: number, heldC: number): boolean => Math.abs(plateC - heldC) > HELD_K;
