import { referenceFunctions } from '../thermocouple/thermocouple.ts';
import type { ThermocoupleType } from '../thermocouple/types.ts';
import { type CalibrationPoint, LEAST_READINGS, MOST_POINTS, type Mounting } from './calibration.ts';
import { kindsFor, referenceOf } from './points.ts';
import { type CalibrationRefusal, isRefusal } from './refusals.ts';
import { spreadBoundK } from './steadiness.ts';

/** Whether points can make a calibration: looked at one by one, then two by two. The first objection counts. */

/** No temperature or uncertainty that anybody measures is as large, degC or K; squares of larger ones overflow. */
const NO_FIGURE = 1e6;

export interface CalibratedProbe {
  readonly mounting: Mounting;
  readonly thermocouple: ThermocoupleType;
}

/** Points this close together say one thing twice and not two things, K (our own choice). */
const DUPLICATE_K = 5;
/** A line through less than this tells more of the points' own errors than of the probe, K (our own choice). */
export const LEAST_SPAN_K = 30;
/**
 * A correction beyond this speaks of the wrong type, the wrong point or a probe that has come off, K (our own choice). A
 * loose probe has the tolerances of its wire and its board; a fitted one also reads low by its mounting.
 */
const LARGEST_CORRECTION_K: Readonly<Record<Mounting, number>> = { loose: 10, fitted: 25 };
/** The same of the slope, K a K (our own choice). Far below 1, so that a hotter plate always reads hotter. */
export const LARGEST_SLOPE = 0.2;
/** How far a point's own temperature may be from what water can have there, K: figures that were rounded. */
const WATER_REFERENCE_K = 0.5;

/** The temperatures that a probe of a type can read, degC. */
function readableC(type: ThermocoupleType): { readonly minC: number; readonly maxC: number } {
  const { forward, inverse } = referenceFunctions[type];
  return { minC: inverse[0].tMinC, maxC: forward[1].tMaxC };
}

/** Why these points can't make a calibration; null where they can. */
export function objectionTo(
  points: readonly CalibrationPoint[],
  probe: CalibratedProbe,
): CalibrationRefusal | null {
  if (points.length === 0) return { reason: 'no-points' };
  if (points.length > MOST_POINTS)
    return { reason: 'too-many-points', count: points.length, most: MOST_POINTS };
  return (
    first(points, (p, i) => objectionToOne(p, i, probe)) ??
    objectionToPairs(points) ??
    first(points, (p, i) => objectionToWaterReading(p, i)) ??
    first(points, (p, i) => objectionToSize(p, i, probe.mounting))
  );
}

function first(
  points: readonly CalibrationPoint[],
  objection: (point: CalibrationPoint, place: number) => CalibrationRefusal | null,
): CalibrationRefusal | null {
  for (const [i, point] of points.entries()) {
    const found = objection(point, i);
    if (found !== null) return found;
  }
  return null;
}

function objectionToOne(
  p: CalibrationPoint,
  point: number,
  { mounting, thermocouple }: CalibratedProbe,
): CalibrationRefusal | null {
  if (!kindsFor(mounting).includes(p.kind)) return { reason: 'water-on-fitted', point };
  const numbers = [p.readingC, p.readingSpreadK, p.referenceC, p.referenceUK, p.resolutionK ?? 0];
  if (!numbers.every((x) => Math.abs(x) < NO_FIGURE)) return { reason: 'not-a-number', point };
  if (p.readings < LEAST_READINGS) return { reason: 'few-readings', point, readings: p.readings };
  const range = readableC(thermocouple);
  for (const tC of [p.referenceC, p.readingC])
    if (tC < range.minC || tC > range.maxC) return { reason: 'out-of-range', point, tC, ...range };
  const boundK = spreadBoundK(p.kind, p.resolutionK);
  if (p.readingSpreadK > boundK) return { reason: 'unsteady', point, spreadK: p.readingSpreadK, boundK };
  return objectionToWaterReference(p, point);
}

/** Water has no other temperature than the one that pressure or altitude gives it. */
function objectionToWaterReference(p: CalibrationPoint, point: number): CalibrationRefusal | null {
  const { kind, pressureHpa, altitudeM, referenceC: givenC } = p;
  if (kind === 'contact') return null;
  const possible = referenceOf(kind === 'ice' ? { kind } : { kind, pressureHpa, altitudeM });
  if (isRefusal(possible)) return possible;
  const { referenceC: possibleC } = possible;
  if (Math.abs(givenC - possibleC) <= WATER_REFERENCE_K) return null;
  return { reason: 'water-temperature', point, kind, givenC, possibleC };
}

function objectionToPairs(points: readonly CalibrationPoint[]): CalibrationRefusal | null {
  const rising = points.map((p, place) => ({ ...p, place })).sort((a, b) => a.referenceC - b.referenceC);
  let under: (typeof rising)[number] | null = null;
  let duplicate: CalibrationRefusal | null = null;
  for (const p of rising) {
    if (under !== null) {
      const apartK = p.referenceC - under.referenceC;
      if (apartK < DUPLICATE_K)
        duplicate ??= { reason: 'duplicate', point: p.place, other: under.place, apartK };
      else if (p.readingC <= under.readingC)
        return {
          reason: 'reversed',
          point: p.place,
          other: under.place,
          referenceC: p.referenceC,
          otherReferenceC: under.referenceC,
          readingC: p.readingC,
          otherReadingC: under.readingC,
        };
    }
    under = p;
  }
  if (duplicate !== null) return duplicate;
  const spanK = Math.max(...points.map((p) => p.readingC)) - Math.min(...points.map((p) => p.readingC));
  return points.length > 1 && spanK < LEAST_SPAN_K ? { reason: 'too-close', spanK } : null;
}

/** Far from what water has, a reading more likely tells of water that doesn't boil, or ice that doesn't melt. */
function objectionToWaterReading(p: CalibrationPoint, point: number): CalibrationRefusal | null {
  const { kind, readingC, referenceC } = p;
  if (kind === 'contact' || Math.abs(referenceC - readingC) <= LARGEST_CORRECTION_K.loose) return null;
  return { reason: 'water-reading', point, kind, readingC, referenceC };
}

function objectionToSize(p: CalibrationPoint, point: number, mounting: Mounting): CalibrationRefusal | null {
  const correctionK = p.referenceC - p.readingC;
  const boundK = LARGEST_CORRECTION_K[mounting];
  if (Math.abs(correctionK) <= boundK) return null;
  return { reason: 'correction-too-large', point, correctionK, boundK };
}
