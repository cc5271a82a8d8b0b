import type { Point } from './turning.ts';

/** One whole thermostat cycle, from trough to trough. */
export interface Cycle {
  readonly fromMs: number;
  readonly toMs: number;
  readonly peakC: number;
  /** The lower of the two troughs, degC. */
  readonly troughC: number;
  /** Mean over time, degC. */
  readonly meanC: number;
}

/** The cycle between two troughs with a peak between them. */
export function cycleBetween(from: Point, peak: Point, to: Point): Cycle {
  return {
    fromMs: from.tMs,
    toMs: to.tMs,
    peakC: peak.plateC,
    troughC: Math.min(from.plateC, to.plateC),
    meanC: ((to.integralCs - from.integralCs) * 1000) / (to.tMs - from.tMs),
  };
}
