import type { ProbeSettings } from '../thermometer/probe.ts';
import { type CalibrationPoint, MOST_POINTS, type Mounting, type PointKind } from './calibration.ts';
import { objectionTo } from './check-points.ts';
import type { Correction } from './correction.ts';
import { fitCorrection } from './fit.ts';
import { kindsFor, type ReferenceFacts, referenceOf } from './points.ts';
import { type CalibrationRefusal, isRefusal } from './refusals.ts';
import { addReading, measuredOf, type Steadiness, startWaiting, waitingNow } from './steadiness.ts';

/** A calibration while it is being made: points kept so far, and the waiting at the next one. Survives JSON. */
export interface Procedure {
  readonly mounting: Mounting;
  readonly madeWith: MadeWith;
  readonly points: readonly CalibrationPoint[];
  /** Null between points. */
  readonly waiting: Steadiness | null;
}

/** How the probe is read and where it sits: points that differ in this don't go together. */
export interface MadeWith extends Pick<ProbeSettings, 'thermocouple' | 'unit'> {
  /** Id of the iron that it sits on; null: on none. */
  readonly iron: string | null;
}

/** What goes with a point beside what was measured. */
export interface PointTaken {
  readonly facts: ReferenceFacts;
  readonly instrument: string;
  readonly takenAt: string;
  /** Time of the watch's clock, ms. */
  readonly nowMs: number;
}

export const beginProcedure = (mounting: Mounting, madeWith: MadeWith): Procedure => ({
  mounting,
  madeWith,
  points: [],
  waiting: null,
});

/** Whether the probe is still read as it was, and, where it is fitted, still sits there. */
export const goesOnWith = (
  { mounting, madeWith }: Pick<Procedure, 'mounting' | 'madeWith'>,
  now: MadeWith,
): boolean =>
  madeWith.thermocouple === now.thermocouple &&
  madeWith.unit === now.unit &&
  (mounting === 'loose' || madeWith.iron === now.iron);

/** Begins to wait at a kind of point, anew where it waited already; `null` ends the waiting. */
export function waitAt(procedure: Procedure, kind: PointKind | null): Procedure | CalibrationRefusal {
  if (kind === null) return { ...procedure, waiting: null };
  const { mounting, points } = procedure;
  if (!kindsFor(mounting).includes(kind)) return { reason: 'water-on-fitted', point: null };
  if (points.length >= MOST_POINTS)
    return { reason: 'too-many-points', count: points.length + 1, most: MOST_POINTS };
  return { ...procedure, waiting: startWaiting(kind) };
}

/** Takes one uncorrected reading in, degC; without waiting it is of no account. */
export const heardIn = (procedure: Procedure, tMs: number, readC: number): Procedure =>
  procedure.waiting === null
    ? procedure
    : { ...procedure, waiting: addReading(procedure.waiting, tMs, readC) };

/** Keeps what was waited for as a point. How it goes with the others is for `outcomeOf`. */
export function keepPoint(procedure: Procedure, taken: PointTaken): Procedure | CalibrationRefusal {
  const place = procedure.points.length;
  const { waiting, mounting, madeWith } = procedure;
  if (waiting === null) return { reason: 'few-readings', point: place, readings: 0 };
  const seen = waitingNow(waiting, taken.nowMs);
  const measured = measuredOf(seen);
  if (measured === null) return { reason: 'few-readings', point: place, readings: 0 };
  if (!seen.steady)
    return { reason: 'not-steady', point: place, progress: seen.progress, driftKPerMin: seen.driftKPerMin };
  const reference = referenceOf(taken.facts);
  if (isRefusal(reference)) return reference;
  const point = pointOf(taken, measured, reference);
  const objection = objectionTo([point], { mounting, thermocouple: madeWith.thermocouple });
  if (objection !== null) return 'point' in objection ? { ...objection, point: place } : objection;
  return { ...procedure, points: [...procedure.points, point], waiting: null };
}

function pointOf(
  { facts, instrument, takenAt }: PointTaken,
  measured: Pick<CalibrationPoint, 'readingC' | 'readingSpreadK' | 'readings' | 'resolutionK'>,
  { referenceC, referenceUK }: Pick<CalibrationPoint, 'referenceC' | 'referenceUK'>,
): CalibrationPoint {
  const { pressureHpa, altitudeM } =
    facts.kind === 'boiling' ? facts : { pressureHpa: null, altitudeM: null };
  return {
    ...measured,
    kind: facts.kind,
    referenceC,
    referenceUK,
    pressureHpa,
    altitudeM,
    instrument,
    takenAt,
  };
}

/** Takes a point out again, by its place; null where there is none. */
export const dropPoint = (procedure: Procedure, place: number): Procedure | null =>
  place in procedure.points ? { ...procedure, points: procedure.points.filter((_, i) => i !== place) } : null;

/** What the points kept so far give, or why they give nothing. */
export const outcomeOf = ({ points, mounting, madeWith }: Procedure): Correction | CalibrationRefusal =>
  fitCorrection(points, { mounting, thermocouple: madeWith.thermocouple });
