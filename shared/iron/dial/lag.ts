import type { DialFigures } from './figures.ts';

/** Peaks are read through a smoothing that trails by so much itself, s (`thermometer/smooth.ts`). */
const SMOOTHING_S = 1;

/**
 * How far the true peaks can be over those that a lagging probe shows, K, at most. Exact for a plate that rises and
 * falls in straight lines: the lag rounds the corner off. A real plate's peak is round already and loses less. The mean
 * over whole cycles loses nothing.
 *
 * Formula (mathematical): a first-order lag tau on a ramp of slope r that turns into one of slope -f peaks by
 * f tau ln((r + f) / f) under the corner.
 * @param lagS time constant of the probe on its plate, s
 */
export function lagAllowanceK({ fluctuationK, periodS, duty }: DialFigures, lagS: number): number {
  const riseS = duty * periodS;
  const fallS = periodS - riseS;
  if (!(riseS > 0 && fallS > 0)) return 0;
  const rise = fluctuationK / riseS;
  const fall = fluctuationK / fallS;
  return fall * (lagS + SMOOTHING_S) * Math.log((rise + fall) / fall);
}
