import { type Calibration, isMadeInPlace } from '../calibration/calibration.ts';
import { rectangularU } from '../calibration/rectangular.ts';
import type { Unevenness } from '../iron/evenness.ts';
import { UNMEASURED_LAG_S } from './lag/filter.ts';
import { type Placed, seatOf } from './place.ts';
import type { ProbeSettings } from './probe.ts';
import { estimateOf, type Thermometer } from './thermometer.ts';
import { type Budget, budget, type Confidence } from './uncertainty.ts';

/** How far a probe's readings can be trusted, from what is settled about it. */

/** Whose readings, on which iron, against a limit held with which confidence. */
export interface Trusting {
  readonly probe: TrustedProbe;
  readonly iron: { readonly id: string; readonly confidence: Confidence };
}

/** A probe with as much of its calibration as trust depends on, so that one can be weighed before it is saved. */
export interface TrustedProbe extends ProbeSettings, Placed {
  readonly calibration:
    | (Pick<Calibration, 'correction' | 'mounting' | 'iron'> & Partial<Pick<Calibration, 'madeAt'>>)
    | null;
  readonly unevenness?: Unevenness;
}

export interface TrustedReading {
  /** Uncorrected, degC. */
  readonly readC: number;
  /** The probe's step as it was seen; null where none was. */
  readonly resolutionK: number | null;
  /** Standard uncertainty for lag, K: 0 at rest. */
  readonly lagUK: number;
}

/** The uncertainty budget of one reading. */
export function budgetOf({ probe, iron }: Trusting, reading: TrustedReading): Budget {
  const { calibration, thermocouple, toleranceClass, mountingK, unevenness = null } = probe;
  const onPad = seatOf(probe, iron.id) === 'check-pad';
  return budget({
    readingC: reading.readC,
    thermocouple,
    toleranceClass,
    calibration:
      calibration === null
        ? null
        : { correction: calibration.correction, inPlace: isInPlace(probe, iron.id) },
    resolutionK: reading.resolutionK,
    mountingK,
    onPad,
    lagUK: reading.lagUK,
    unevenness,
    confidence: iron.confidence,
  });
}

/** Whether a calibration was made with the probe where it is now: one of before it got there knows another mounting. */
function isInPlace({ calibration, place }: TrustedProbe, iron: string): boolean {
  if (calibration === null || !isMadeInPlace(calibration, iron)) return false;
  const { madeAt } = calibration;
  const toldAt = place?.toldAt ?? null;
  // The daemon writes both, in UTC and in one form: they compare as text.
  return madeAt === undefined || toldAt === null || madeAt >= toldAt;
}

/**
 * No iron's plate rises faster (our own choice: twice the 2 K/s of a kilowatt in the light plate of the textbooks), K/s.
 * What looks faster is a probe that was moved.
 */
const FASTEST_K_PER_S = 4;
const MOST_AHEAD_K = FASTEST_K_PER_S * UNMEASURED_LAG_S;

/** The budget of what a probe reads now; null where it gives no valid reading. */
export function budgetOfNow(trusting: Trusting, t: Thermometer): Budget | null {
  const estimate = estimateOf(t, trusting.probe);
  if (estimate === null || t.lastOk === null) return null;
  const { lag } = trusting.probe;
  const onPad = seatOf(trusting.probe, trusting.iron.id) === 'check-pad';
  // What a lag that was not measured may hide is taken for a limit.
  // How fast a check pad moves says how far it is from settled, and nothing of its plate.
  const lagUK = onPad
    ? 0
    : lag === null
      ? rectangularU(Math.min(MOST_AHEAD_K, Math.max(0, estimate.aheadK)))
      : lag.standardS * Math.min(FASTEST_K_PER_S, Math.abs(estimate.slopeKPerS));
  return budgetOf(trusting, { readC: t.lastOk.readC, resolutionK: t.filter?.noise.stepK ?? null, lagUK });
}

/** The guard band of what a probe reads now, K; without a valid reading that of a plate at rest at `limitC`. */
export const guardBandNowK = (trusting: Trusting, t: Thermometer, limitC: number): number =>
  budgetOfNow(trusting, t)?.guardBandK ?? restingGuardBandK(trusting, limitC);

/** The budget at a temperature with the plate at rest: where there is no reading to go by. */
export const restingBudget = (trusting: Trusting, atC: number): Budget =>
  budgetOf(trusting, { readC: atC, resolutionK: null, lagUK: 0 });

/** The guard band that it makes, K. */
export const restingGuardBandK = (trusting: Trusting, atC: number): number =>
  restingBudget(trusting, atC).guardBandK;
