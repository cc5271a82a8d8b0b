import { COLD_C } from '../thermometer/thermometer.ts';
import type { Cycle } from './cycle.ts';

/** What the plate is doing as a whole. */
export const ironPhases = ['unknown', 'cold', 'warming', 'regulating', 'cooling'] as const;
export type IronPhase = (typeof ironPhases)[number];

/** A plate this far under its own troughs, still falling, is no longer regulated, K (our own choice). */
const BELOW_TROUGH_K = 8;
/** Before a trough is known, one this far under the first peak, K (our own choice: wider than any swing listed). */
const BELOW_PEAK_K = 45;
/** A plate that has not moved by more than this for so long is held, not warming. */
const HELD_K = 3;
const HELD_MS = 30_000;

export interface PhaseFacts {
  readonly plateC: number;
  readonly tMs: number;
  readonly turn: 'peak' | 'trough' | null;
  readonly direction: 'rising' | 'falling' | 'unknown';
  readonly cycles: readonly Cycle[];
  readonly lastPeakC: number | null;
  /** Since when the plate has stayed within a few kelvins. */
  readonly heldSinceMs: number;
}

/** The phase after one more reading. */
export function nextPhase(phase: IronPhase, facts: PhaseFacts): IronPhase {
  if (facts.plateC < COLD_C) return 'cold';
  switch (phase) {
    case 'unknown':
    case 'cold':
      return 'warming';
    case 'warming':
    case 'cooling':
      return afterMoving(phase, facts);
    case 'regulating':
      return hasDropped(facts) ? 'cooling' : 'regulating';
  }
}

function afterMoving(phase: 'warming' | 'cooling', facts: PhaseFacts): IronPhase {
  if (facts.turn === 'peak') return 'regulating';
  if (facts.tMs - facts.heldSinceMs >= HELD_MS) return 'regulating';
  return facts.turn === 'trough' ? 'warming' : phase;
}

function hasDropped(facts: PhaseFacts): boolean {
  if (facts.direction !== 'falling') return false;
  const [first] = facts.cycles;
  if (first !== undefined) {
    const lowestC = Math.min(...facts.cycles.map((c) => c.troughC));
    return facts.plateC < lowestC - BELOW_TROUGH_K;
  }
  return facts.lastPeakC !== null && facts.plateC < facts.lastPeakC - BELOW_PEAK_K;
}

/** Whether a plate has left the few kelvins in which it counts as held. */
export const hasMoved = (plateC: number, heldC: number): boolean => Math.abs(plateC - heldC) > HELD_K;
