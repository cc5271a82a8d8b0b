import type { BandVerdict } from '../heat/band.ts';
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

export function overLimit({ plateC, limitC }: PlateFacts, deadbandK: number): Condition {
  if (plateC === null) return 'unknown';
  if (plateC >= limitC) return 'beyond';
  return plateC > limitC - deadbandK ? 'in-deadband' : 'inside';
}

export function headingForLimit({ plateC, slopeKPerS, limitC, expectedPeakC }: PlateFacts): Condition {
  if (plateC === null) return 'unknown';
  if (plateC >= limitC) return 'in-deadband';
  if (slopeKPerS === null || slopeKPerS <= 0) return 'inside';
  const withinItsPeaks =
    expectedPeakC !== null && expectedPeakC < limitC && plateC <= expectedPeakC + PEAK_MARGIN_K;
  if (withinItsPeaks) return 'inside';
  const leftS = (limitC - plateC) / slopeKPerS;
  if (leftS <= WARN_S) return 'beyond';
  return leftS <= TAKE_BACK_S ? 'in-deadband' : 'inside';
}

/** @param mayBeHot the plate was hot when last measured, or has never been measured on a device that is there */
export function noReading(quality: Quality, mayBeHot: boolean): Condition {
  if (quality === 'ok') return 'inside';
  return mayBeHot ? 'beyond' : 'unknown';
}

export function outOfBand(verdict: BandVerdict, side: 'above' | 'below'): Condition {
  if (verdict === 'undecided') return 'unknown';
  return verdict === side ? 'beyond' : 'inside';
}

export const notRecording = (kept: boolean): Condition => (kept ? 'inside' : 'beyond');
