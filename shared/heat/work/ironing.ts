import type { HeatSchedule, HeatStage } from '../schedule.ts';
import { type At, isSameSpot, placeName } from './at.ts';
import { FABRIC_ROOM_C, followFabric } from './fabric.ts';
import { stageReachedAt } from './reached.ts';
import type { Visit } from './visit.ts';

/**
 * The heat of a visit as it goes on: what the plate was while it touched the work, and how far the fabric has followed
 * it. Plain data; times are ms of the watch's clock.
 */
export interface OpenVisit extends Omit<Visit, 'toMs' | 'spot' | 'placeName' | 'presumed' | 'takenBack'> {
  readonly at: At | null;
  /** The fabric under the plate now, degC. */
  readonly nowC: number;
  /** Time with a valid reading, ms, and the plate's temperature summed over it, degC ms: for its mean. */
  readonly readMs: number;
  readonly plateCMs: number;
  /** Up to when it has been followed. */
  readonly lastMs: number;
  /** When it was last told; null: not yet. */
  readonly toldMs: number | null;
}

/** What the plate does while it touches the work. */
export interface Contact {
  readonly tMs: number;
  /** Null where there is no valid reading. */
  readonly plate: { readonly plateC: number; readonly guardBandK: number } | null;
  readonly moving: boolean;
  readonly stages: HeatSchedule['stages'];
  /** The stage that is being worked; null: none was chosen. */
  readonly stage: HeatStage | null;
}

export const openVisit = (n: number, at: At | null, tMs: number): OpenVisit => ({
  n,
  fromMs: tMs,
  at,
  contactBy: 'marks',
  contactMs: 0,
  peakC: null,
  guardBandK: 0,
  fabricC: null,
  reached: null,
  inBandMs: 0,
  lapDone: false,
  nowC: FABRIC_ROOM_C,
  readMs: 0,
  plateCMs: 0,
  lastMs: tMs,
  toldMs: null,
});

/** Goes on in contact up to now. A plate without a valid reading heats in a way that nobody knows: only time passes. */
export function inContact(before: OpenVisit, { tMs, plate, moving, stages, stage }: Contact): OpenVisit {
  const dtMs = Math.max(0, tMs - before.lastMs);
  const visit: OpenVisit = {
    ...before,
    lastMs: tMs,
    contactMs: before.contactMs + dtMs,
    contactBy: moving ? 'motion' : before.contactBy,
  };
  if (plate === null) return visit;
  const { plateC, guardBandK } = plate;
  const nowC = followFabric(before.nowC, plateC, dtMs / 1000);
  const fabricC = Math.max(nowC, before.fabricC ?? nowC);
  const inBand = stage !== null && plateC >= stage.lowC && plateC <= stage.highC;
  const hotter = before.peakC === null || plateC > before.peakC;
  return {
    ...visit,
    nowC,
    readMs: before.readMs + dtMs,
    plateCMs: before.plateCMs + plateC * dtMs,
    fabricC,
    peakC: hotter ? plateC : before.peakC,
    guardBandK: hotter ? guardBandK : before.guardBandK,
    reached: fabricC === before.fabricC ? before.reached : stageReachedAt(stages, fabricC, stage?.id ?? null),
    inBandMs: before.inBandMs + (inBand ? dtMs : 0),
  };
}

/** Two visits that were one: what the later one had is the earlier one's, as if the mark between had not been made. */
export function joined(earlier: OpenVisit, later: OpenVisit): OpenVisit {
  const hottest = (later.peakC ?? Number.NEGATIVE_INFINITY) > (earlier.peakC ?? Number.NEGATIVE_INFINITY);
  const fabric = (later.fabricC ?? Number.NEGATIVE_INFINITY) > (earlier.fabricC ?? Number.NEGATIVE_INFINITY);
  return {
    ...earlier,
    contactBy: later.contactBy === 'motion' ? 'motion' : earlier.contactBy,
    contactMs: earlier.contactMs + later.contactMs,
    peakC: hottest ? later.peakC : earlier.peakC,
    guardBandK: hottest ? later.guardBandK : earlier.guardBandK,
    fabricC: fabric ? later.fabricC : earlier.fabricC,
    reached: fabric ? later.reached : earlier.reached,
    inBandMs: earlier.inBandMs + later.inBandMs,
    nowC: later.contactMs === 0 ? earlier.nowC : later.nowC,
    readMs: earlier.readMs + later.readMs,
    plateCMs: earlier.plateCMs + later.plateCMs,
    lastMs: later.lastMs,
  };
}

/** As it is told: the place without what the watch has to know of it. */
export function toldVisit(visit: OpenVisit, takenBack = false): Visit {
  const { n, fromMs, lastMs, at, contactBy, contactMs, peakC, guardBandK, fabricC, reached } = visit;
  const spot = at === null ? null : { piece: at.piece, version: at.version, side: at.side, area: at.area };
  return {
    n,
    fromMs,
    toMs: lastMs,
    spot,
    placeName: at === null ? '' : placeName(at),
    presumed: at?.presumed ?? false,
    contactBy,
    contactMs,
    peakC,
    guardBandK,
    fabricC,
    reached,
    inBandMs: visit.inBandMs,
    lapDone: visit.lapDone,
    takenBack,
  };
}

/** Whether a visit goes on at a place that was marked: the same spot, which may have been confirmed meanwhile. */
export const staysAt = ({ at }: Pick<OpenVisit, 'at'>, now: At | null): boolean => isSameSpot(at, now);

/**
 * A lap over a whole side: what every part of it has had isn't the plate's peak, which came somewhere, but its mean over
 * the lap.
 */
export function lapOver(lap: OpenVisit, stages: HeatSchedule['stages'], stage: HeatStage | null): OpenVisit {
  const meanC = lap.readMs === 0 ? null : lap.plateCMs / lap.readMs;
  const lowerC = meanC === null || lap.fabricC === null ? null : Math.min(meanC, lap.fabricC);
  return { ...lap, lapDone: true, reached: stageReachedAt(stages, lowerC, stage?.id ?? null) };
}
