import { approximateC, emfAndSlope, inversePieceAt, type ReferenceFunctions } from './reference-functions.ts';
import { typeE } from './type-e.ts';
import { typeJ } from './type-j.ts';
import { typeK } from './type-k.ts';
import { typeN } from './type-n.ts';
import { typeT } from './type-t.ts';
import type { ThermocoupleType } from './types.ts';

/** Thermocouples by ITS-90: emf from temperature, temperature from emf, cold junction. */

export const referenceFunctions: Readonly<Record<ThermocoupleType, ReferenceFunctions>> = {
  K: typeK,
  J: typeJ,
  T: typeT,
  E: typeE,
  N: typeN,
};

/** Half of the last digit that the published tables print (0.001 mV), microvolt. */
const HALF_PRINTED_DIGIT_UV = 0.5;

/** The published inverse is within 0.06 K; a step squares what is left, so two reach the floor of a double. */
const NEWTON_STEPS = 2;

/**
 * Where a cold junction may be, degC: the range that common electronics are rated for (common practice, no source).
 * A value beyond it speaks of a broken sensor, not of a shop.
 */
export const COLD_JUNCTION_RANGE_C = { min: -40, max: 125 } as const;

/**
 * emf of a thermocouple with its hot junction at `tC` (degC) and its cold junction at 0 degC, in microvolt.
 * Null outside the published range of the type, whose ends are included: from -270 degC (J: -210) to 1372 (K),
 * 1200 (J), 400 (T), 1000 (E) or 1300 (N); null also for NaN.
 * Source: NIST Monograph 175, reference functions on ITS-90 (the same as IEC 60584-1).
 */
export function emfUv(type: ThermocoupleType, tC: number): number | null {
  const functions = referenceFunctions[type];
  const [below, above] = functions.forward;
  const inRange = tC >= below.tMinC && tC <= above.tMaxC;
  return inRange ? emfAndSlope(functions, tC).emfMv * 1000 : null;
}

/**
 * Hot-junction temperature, degC, from an emf in microvolt whose cold junction is at 0 degC. Within 0.001 degC of
 * the exact inverse of the reference function; always the same answer for the same emf.
 *
 * Null outside the published inverse range (from -200 degC, J from -210, to the highest temperature of the type)
 * and for NaN. The ends are printed to 1 microvolt, so an emf up to half of that beyond one is still taken. No
 * answer lies beyond an end: such an emf gives the end itself.
 * Source: NIST Monograph 175: its inverse polynomials to start from, then Newton's method on the reference function.
 */
export function temperatureC(type: ThermocoupleType, emfUv: number): number | null {
  const functions = referenceFunctions[type];
  const lowest = inversePieceAt(functions, Number.NEGATIVE_INFINITY);
  const highest = inversePieceAt(functions, Number.POSITIVE_INFINITY);
  const withinPrintedRange =
    emfUv >= wholeUv(lowest.emfMinMv) - HALF_PRINTED_DIGIT_UV &&
    emfUv <= wholeUv(highest.emfMaxMv) + HALF_PRINTED_DIGIT_UV;
  if (!withinPrintedRange) return null;

  const emfMv = emfUv / 1000;
  let tC = approximateC(inversePieceAt(functions, emfMv), emfMv);
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    const at = emfAndSlope(functions, tC);
    tC -= (at.emfMv - emfMv) / at.slopeMvPerK;
  }
  return Math.min(Math.max(tC, lowest.tMinC), highest.tMaxC);
}

/** A printed emf in whole microvolt: its three decimals of a millivolt are not exact in a double. */
const wholeUv = (printedMv: number): number => Math.round(printedMv * 1000);

/**
 * Hot-junction temperature, degC, from the emf between the terminals (`terminalUv`, microvolt) and the temperature
 * of the terminals (`coldJunctionC`, degC). The cold junction's emf is added before the sum is inverted: adding
 * temperatures would be wrong, since emf is not linear in temperature.
 * Null when the cold junction is outside `COLD_JUNCTION_RANGE_C`, when the sum is outside the range that
 * `temperatureC` takes, and for NaN.
 */
export function hotJunctionC(
  type: ThermocoupleType,
  terminalUv: number,
  coldJunctionC: number,
): number | null {
  const { min, max } = COLD_JUNCTION_RANGE_C;
  if (!(coldJunctionC >= min && coldJunctionC <= max)) return null;
  const coldUv = emfUv(type, coldJunctionC);
  return coldUv === null ? null : temperatureC(type, terminalUv + coldUv);
}
