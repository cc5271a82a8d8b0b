import type { Condition } from '../../../shared/alarm/machine.ts';

/** The plainest rule, for comparison: seconds to the limit by the slope alone, once the plate passes its own peaks. */

const WARN_S = 10;
const TAKE_BACK_S = 15;
const PEAK_MARGIN_K = 2;

export interface SlopeFacts {
  readonly plateC: number | null;
  readonly slopeKPerS: number | null;
  readonly limitC: number;
  readonly expectedPeakC: number | null;
}

export function headingBySlope({ plateC, slopeKPerS, limitC, expectedPeakC }: SlopeFacts): Condition {
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
