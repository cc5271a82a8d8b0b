import {
  addReading,
  GAP_MS,
  type Steadiness,
  startWaiting,
  waitingOf,
} from '../../calibration/steadiness.ts';
import { type DeviceClock, placeInTime } from '../device-clock.ts';
import { type StepRefusal, type TimeConstant, timeConstantOf } from './time-constant.ts';

/** How a probe is given a step: plunged into water, or clipped onto a plate at steady heat. */
export const stepKinds = ['plunge', 'clip'] as const;
export type StepKind = (typeof stepKinds)[number];

/** Why a step gives no time constant: what its record says, or that it came before the probe was at rest. */
export type LagRefusal = StepRefusal | { readonly reason: 'start-not-steady'; readonly changeK: number };

export type StepEnd =
  | { readonly kind: 'found'; readonly found: TimeConstant }
  | { readonly kind: 'refused'; readonly refusal: LagRefusal };

/**
 * Follows a probe that comes to rest, meets a step and settles. The end is found by itself, so that both hands are free
 * for the probe. Survives JSON.
 */
export interface StepWatch {
  readonly kind: StepKind;
  readonly startedMs: number;
  readonly record: readonly RecordedReading[];
  readonly clock: DeviceClock | null;
  /** How it rests, before the step. */
  readonly resting: Steadiness<'air'>;
  /** Where it last stood at rest; null while it never did. */
  readonly rest: { readonly meanC: number; readonly tMs: number } | null;
  /** When the step was seen, ms of the watch's clock; null before it. */
  readonly steppedMs: number | null;
  /** How it settles, after the step. */
  readonly settling: Steadiness;
  readonly triedMs: number;
  readonly end: StepEnd | null;
}

export interface RecordedReading {
  readonly tMs: number;
  readonly tC: number;
}

/** What is heard of the probe: uncorrected, since a correction changes nothing in how fast it follows. */
export interface StepHeard {
  readonly tMs: number;
  readonly deviceMs: number | null;
  readonly readC: number;
}

/** All of these are our own choices. A probe that is off its rest level by this has met the step, K. */
const STEP_SEEN_K = 5;
/** The level at rest counts for so long after it was left, ms: picking the probe up moves it a little. */
const REST_COUNTS_MS = 10_000;
/** So much in so short a time before it was at rest is a step that came too early, K and ms. */
const EARLY_K = 8;
const EARLY_MS = 3000;
/** Readings closer than this tell nothing more of a lag of a second, ms. */
const APART_MS = 50;
/** How much of the record before the step is kept, ms. */
const KEEP_MS = 60_000;
/** The record is looked at so often, ms; and is closed so many time constants after the step. */
const TRY_MS = 1000;
const ENOUGH_TIMES = 6;
/** What has not settled so long after the step is not waited for, ms. */
const SETTLES_MS = 180_000;
/** Nothing lasts longer than this, ms: meanwhile the probe isn't judged as one that stays on its plate. */
export const STEP_LASTS_MS = 600_000;

export const startStep = (kind: StepKind, nowMs: number): StepWatch => ({
  kind,
  startedMs: nowMs,
  record: [],
  clock: null,
  resting: startWaiting('air'),
  rest: null,
  steppedMs: null,
  settling: startWaiting('contact'),
  triedMs: 0,
  end: null,
});

/** Takes one more valid reading in. */
export function heardInStep(before: StepWatch, heard: StepHeard): StepWatch {
  if (before.end !== null || !Number.isFinite(heard.readC)) return before;
  const { tMs, deviceMs } = heard;
  const timed = deviceMs === null ? null : placeInTime(before.clock ?? undefined, deviceMs, tMs);
  const reading = { tMs: timed?.atMs ?? tMs, tC: heard.readC + 0 };
  const last = before.record.at(-1);
  const watch = { ...before, clock: timed?.clock ?? null };
  if (last !== undefined && reading.tMs - last.tMs < APART_MS) return watch;
  if (tMs - watch.startedMs > STEP_LASTS_MS) return stopStep(watch);
  return watch.steppedMs === null ? beforeStep(watch, reading, tMs) : afterStep(watch, reading, tMs);
}

function beforeStep(before: StepWatch, reading: RecordedReading, tMs: number): StepWatch {
  const { tC } = reading;
  const { rest } = before;
  const isFresh = tMs - before.resting.lastMs > GAP_MS;
  const kept = isFresh ? [] : before.record.filter((r) => reading.tMs - r.tMs < KEEP_MS);
  const watch = { ...before, record: [...kept, reading] };
  if (rest !== null && tMs - rest.tMs < REST_COUNTS_MS && Math.abs(tC - rest.meanC) >= STEP_SEEN_K)
    return { ...watch, steppedMs: tMs, settling: addReading(watch.settling, tMs, tC) };
  const changeK = Math.max(
    ...kept.flatMap((r) => (reading.tMs - r.tMs <= EARLY_MS ? [Math.abs(tC - r.tC)] : [0])),
    0,
  );
  if (changeK >= EARLY_K)
    return { ...watch, end: { kind: 'refused', refusal: { reason: 'start-not-steady', changeK } } };
  const resting = addReading(before.resting, tMs, tC);
  const { steady, meanC } = waitingOf(resting);
  return { ...watch, resting, rest: steady && meanC !== null ? { meanC, tMs } : isFresh ? null : rest };
}

function afterStep(before: StepWatch, reading: RecordedReading, tMs: number): StepWatch {
  const settling = addReading(before.settling, tMs, reading.tC);
  const watch = { ...before, record: [...before.record, reading], settling };
  if (tMs - watch.triedMs < TRY_MS) return watch;
  const sinceMs = tMs - (watch.steppedMs ?? tMs);
  const result = timeConstantOf(watch.record);
  const tried = { ...watch, triedMs: tMs };
  if (result.kind === 'found')
    return sinceMs >= ENOUGH_TIMES * 1000 * result.found.tauS || sinceMs >= SETTLES_MS
      ? { ...tried, end: { kind: 'found', found: result.found } }
      : tried;
  const mayCome = result.refusal.reason === 'end-not-reached' || !waitingOf(settling).steady;
  return sinceMs >= SETTLES_MS || !mayCome ? { ...tried, end: result } : tried;
}

/** Ends it with what there is: what was seen of a step, or why there is no time constant in it. */
export function stopStep(watch: StepWatch): StepWatch {
  if (watch.end !== null) return watch;
  const result = timeConstantOf(watch.record);
  if (result.kind === 'refused') return { ...watch, end: result };
  const { found } = result;
  const changeK = Math.abs(found.endC - found.startC);
  return {
    ...watch,
    end:
      watch.steppedMs === null
        ? { kind: 'refused', refusal: { reason: 'start-not-steady', changeK } }
        : { kind: 'found', found },
  };
}
