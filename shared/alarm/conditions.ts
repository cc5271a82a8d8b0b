import type { BandSeen } from '../heat/band.ts';
import type { Quality } from '../thermometer/reading.ts';
import type { Condition } from './machine.ts';

/** From facts to conditions: one function an alarm. */

/** Seconds before the limit at which the warning comes, and at which it is taken back. */
const WARN_S = 10;
const TAKE_BACK_S = 15;
/** A plate may pass its own usual peaks by this much before its slope is held against it, K. */
const PEAK_MARGIN_K = 2;

export interface PlateFacts {
  /** Null where there is no valid reading. */
  readonly plateC: number | null;
  readonly slopeKPerS: number | null;
  /** The limit with the probe's guard band taken off, degC. */
  readonly limitC: number;
  /** The highest peak to expect of this thermostat, degC; null until its first cycles are known. */
  readonly expectedPeakC: number | null;
}

/** OPC 10000-9 B.1.5: back only where the plate is inside the limit by more than the deadband. */
export function overLimit(
  { plateC, limitC }: Pick<PlateFacts, 'plateC' | 'limitC'>,
  deadbandK: number,
): Condition {
  if (plateC === null) return 'unknown';
  if (plateC >= limitC) return 'beyond';
  return plateC >= limitC - deadbandK ? 'in-deadband' : 'inside';
}

export function headingForLimit({ plateC, slopeKPerS, limitC, expectedPeakC }: PlateFacts): Condition {
  if (plateC === null || slopeKPerS === null) return 'unknown';
  if (plateC >= limitC) return 'in-deadband';
  if (slopeKPerS <= 0) return 'inside';
  const withinItsPeaks =
    expectedPeakC !== null && expectedPeakC < limitC && plateC <= expectedPeakC + PEAK_MARGIN_K;
  if (withinItsPeaks) return 'inside';
  const leftS = (limitC - plateC) / slopeKPerS;
  if (leftS <= WARN_S) return 'beyond';
  return leftS <= TAKE_BACK_S ? 'in-deadband' : 'inside';
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

export const notRecording = (kept: boolean): Condition => (kept ? 'inside' : 'beyond');
