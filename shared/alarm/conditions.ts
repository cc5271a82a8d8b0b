import type { BandSeen } from '../heat/band.ts';
import type { Quality } from '../thermometer/reading.ts';
import type { Suspicion } from '../thermometer/suspect-probe.ts';
import type { Condition } from './machine.ts';

/** From facts to conditions: one function an alarm. */

export interface PlateFacts {
  /** Null where there is no valid reading. */
  readonly plateC: number | null;
  /** The limit with the guard band of this reading taken off, degC. */
  readonly limitC: number;
}

/** OPC 10000-9 B.1.5: back only where the plate is inside the limit by more than the deadband. */
export function overLimit({ plateC, limitC }: PlateFacts, deadbandK: number): Condition {
  if (plateC === null) return 'unknown';
  if (plateC >= limitC) return 'beyond';
  return plateC >= limitC - deadbandK ? 'in-deadband' : 'inside';
}

/**
 * A device that has just been opened is not at fault yet: its boot text raises nothing, clears nothing, and what was
 * amiss before it is not held against it.
 * @param mayBeHot the plate was hot when last measured, or has never been measured on a device that is there
 */
export function noReading(quality: Quality, mayBeHot: boolean): Condition {
  if (quality === 'ok') return 'inside';
  if (quality === 'starting') return 'in-deadband';
  return mayBeHot ? 'beyond' : 'unknown';
}

export function outOfBand(seen: BandSeen, side: 'above' | 'below', deadbandK: number): Condition {
  if (seen.kind === 'not-judged') return 'inside';
  if (seen.kind === 'undecided') return 'unknown';
  const byK = side === 'above' ? seen.aboveByK : seen.belowByK;
  if (byK > 0) return 'beyond';
  return byK >= -deadbandK ? 'in-deadband' : 'inside';
}

/** That a drift is one has been decided by a control chart, which has a memory of its own. */
export const drifted = (drift: { readonly byK: number } | null): Condition =>
  drift === null ? 'inside' : 'beyond';

/** A suspicion is made of what was seen over minutes: it neither comes nor goes with one reading. */
export const suspected = (suspicion: Suspicion | null): Condition =>
  suspicion === null ? 'inside' : 'beyond';

export const notRecording = (kept: boolean): Condition => (kept ? 'inside' : 'beyond');
