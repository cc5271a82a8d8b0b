import { fitStep, type StepCurve, type StepFit, type StepReading } from './step.ts';

/** The time constant of a probe from the record of one step. */

export interface TimeConstant {
  readonly tauS: number;
  /** Standard uncertainty (GUM), s. */
  readonly standardS: number;
  readonly startC: number;
  /** What the probe was heading for when the step came, degC. */
  readonly endC: number;
  /** When the step came, ms of the record's clock. */
  readonly onsetMs: number;
  /** How fast the end itself was moving, K/s. */
  readonly driftKPerS: number;
  /** Standard deviation of what the curve leaves of the readings, K. */
  readonly residualK: number;
  readonly readings: number;
}

/** Why a record gives no time constant, with what was seen. */
export type StepRefusal =
  | { readonly reason: 'no-step'; readonly changeK: number; readonly noiseK: number }
  | { readonly reason: 'step-too-small'; readonly changeK: number; readonly neededK: number }
  | { readonly reason: 'start-not-seen'; readonly readings: number; readonly needed: number }
  | { readonly reason: 'too-few-in-rise'; readonly readings: number; readonly needed: number }
  | { readonly reason: 'end-not-reached'; readonly recordedS: number; readonly movingKPerS: number }
  | { readonly reason: 'not-first-order'; readonly offK: number; readonly changeK: number };

export type StepResult =
  | { readonly kind: 'found'; readonly found: TimeConstant; readonly curve: readonly StepPoint[] }
  | { readonly kind: 'refused'; readonly refusal: StepRefusal };

/** A reading of the record with what the curve leaves of it, for showing. */
export interface StepPoint {
  readonly tMs: number;
  readonly tC: number;
  readonly residualK: number;
}

/** Thresholds are our own choices, by simulated steps. */
const LEAST_READINGS = 10;
const LEAST_BEFORE = 3;
const LEAST_IN_RISE = 5;
/** The rise counts up to so many time constants, s/s: 95 % of the step. */
const RISE_TIMES = 3;
/** The record must go on for so many time constants after the step. */
const END_TIMES = 4;
/** What comes later than this says nothing more of the lag, but much of an unsteady end. */
const LATEST_TIMES = 6;
/** Nor does what is earlier than this, at least `BEFORE_S`. */
const BEFORE_TIMES = 3;
const BEFORE_S = 3;
/** Less than so many times the noise, or less than this, is no step; less than that one is too small a step. */
const STEP_NOISES = 8;
const STEP_K = 2;
const GOOD_STEP_NOISES = 40;
const GOOD_STEP_K = 10;
/** At the end the plate may move by so much of the step in a time constant. */
const END_DRIFT_SHARE = 0.05;
/** The curve may miss the readings in the rise by so much of the step, or by so many times the noise. */
const OFF_SHARE = 0.012;
const OFF_NOISES = 2.5;
const ROUNDS = 4;
/** An end curves where that changes the time constant by so many standard uncertainties. */
const CURVES = 2;
/** A time constant that is less certain than this part of itself says that the answer was no first-order one. */
const UNSURE_SHARE = 0.25;

/**
 * The time constant of the one step in a record, whichever way it goes.
 * @param record readings in any order, ms and degC; what is not a number is left out
 */
export function timeConstantOf(record: readonly { readonly tMs: number; readonly tC: number }[]): StepResult {
  const kept = record
    .filter((r) => Number.isFinite(r.tMs) && Number.isFinite(r.tC))
    .toSorted((a, b) => a.tMs - b.tMs);
  const originMs = kept[0]?.tMs ?? 0;
  const readings = kept.map(({ tMs, tC }) => ({ tS: (tMs - originMs) / 1000, tC }));
  const noiseK = noiseOf(readings);
  const guess = guessOf(readings, noiseK);
  if ('reason' in guess) return { kind: 'refused', refusal: guess };
  const fitted = fitAround(readings, guess);
  const refusal = fitted === null ? notSettled(readings, guess) : refusalOf(fitted, noiseK);
  if (fitted === null || refusal !== null)
    return { kind: 'refused', refusal: refusal ?? notSettled(readings, guess) };
  return { kind: 'found', ...told(fitted, originMs) };
}

/** What lies around the step, fitted with an end that moves evenly, and with one that moves in a curve. */
interface Window {
  readonly readings: readonly StepReading[];
  readonly even: StepFit;
  readonly bent: StepFit;
}

/** Noise with rounding, K: from how far each reading lies off the middle of its neighbours; the usual one counts. */
function noiseOf(readings: readonly StepReading[]): number {
  let stepK = Number.POSITIVE_INFINITY;
  const offs: number[] = [];
  for (let i = 1; i < readings.length; i++) {
    const changeK = Math.abs((readings[i]?.tC ?? 0) - (readings[i - 1]?.tC ?? 0));
    if (changeK > 1e-6) stepK = Math.min(stepK, changeK);
    if (i < 2) continue;
    const [a, b, c] = [readings[i - 2]?.tC ?? 0, readings[i - 1]?.tC ?? 0, readings[i]?.tC ?? 0];
    offs.push(Math.abs(b - (a + c) / 2));
  }
  // The middle of the absolute values of a normal spread is 0.6745 of it; two neighbours add a half to the variance.
  const scatterK = middleOf(offs) / 0.6745 / Math.sqrt(1.5);
  return Math.max(scatterK, Number.isFinite(stepK) ? stepK / Math.sqrt(12) : 0);
}

function middleOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  if (sorted.length === 0) return 0;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
}

/** A first guess: levels from both ends of the record, the step where it leaves the one for the other. */
function guessOf(readings: readonly StepReading[], noiseK: number): StepCurve | StepRefusal {
  const count = readings.length;
  if (count < LEAST_READINGS) return { reason: 'too-few-in-rise', readings: count, needed: LEAST_READINGS };
  const edge = Math.max(LEAST_BEFORE, Math.min(10, Math.floor(count / 10)));
  const startC = middleOf(readings.slice(0, edge).map((r) => r.tC));
  const endC = middleOf(readings.slice(-edge).map((r) => r.tC));
  const riseK = endC - startC;
  const changeK = Math.abs(riseK);
  if (changeK < Math.max(STEP_K, STEP_NOISES * noiseK)) return { reason: 'no-step', changeK, noiseK };
  const neededK = Math.max(GOOD_STEP_K, GOOD_STEP_NOISES * noiseK);
  if (changeK < neededK) return { reason: 'step-too-small', changeK, neededK };
  const covered = (r: StepReading): number => (r.tC - startC) / riseK;
  const past = readings.findIndex((r) => covered(r) >= 0.632);
  const before = readings.slice(0, past).findLastIndex((r) => covered(r) < 0.05);
  const onsetS = readings[Math.max(before, 0)]?.tS ?? 0;
  const tauS = Math.max((readings[past]?.tS ?? 0) - onsetS, 1e-3);
  return { startC, riseK, onsetS, tauS, driftKPerS: 0, bendKPerS2: 0 };
}

/** Fits again and again to what lies around the step, until that stays the same. */
function fitAround(readings: readonly StepReading[], guess: StepCurve): Window | null {
  let window: Window | null = null;
  let curve = guess;
  for (let round = 0; round < ROUNDS; round++) {
    const fromS = curve.onsetS - Math.max(BEFORE_S, BEFORE_TIMES * curve.tauS);
    const toS = curve.onsetS + LATEST_TIMES * curve.tauS;
    const near = readings.filter((r) => r.tS >= fromS && r.tS <= toS);
    // Too few to fit: the last word is with the fit before.
    if (near.length < LEAST_READINGS) return window;
    const even = fitStep(near, curve, false);
    const bent = even === null ? null : fitStep(near, even.curve, true);
    if (even === null || bent === null) return null;
    const same = window?.readings.length === near.length && window.readings[0] === near[0];
    window = { readings: near, even, bent };
    if (same) break;
    curve = even.curve;
  }
  return window;
}

const notSettled = (readings: readonly StepReading[], guess: StepCurve): StepRefusal => {
  const inRise = readings.filter((r) => isInRise(r, guess)).length;
  if (inRise < LEAST_IN_RISE) return { reason: 'too-few-in-rise', readings: inRise, needed: LEAST_IN_RISE };
  return { reason: 'not-first-order', offK: Math.abs(guess.riseK), changeK: Math.abs(guess.riseK) };
};

const isInRise = ({ tS }: StepReading, { onsetS, tauS }: StepCurve): boolean =>
  tS > onsetS && tS <= onsetS + RISE_TIMES * tauS;

function refusalOf(window: Window, noiseK: number): StepRefusal | null {
  const { readings, even } = window;
  const { curve } = even;
  const before = readings.filter((r) => r.tS <= curve.onsetS).length;
  if (before < LEAST_BEFORE) return { reason: 'start-not-seen', readings: before, needed: LEAST_BEFORE };
  const inRise = readings.filter((r) => isInRise(r, curve)).length;
  if (inRise < LEAST_IN_RISE) return { reason: 'too-few-in-rise', readings: inRise, needed: LEAST_IN_RISE };
  const changeK = Math.abs(curve.riseK);
  const recordedS = (readings.at(-1)?.tS ?? 0) - curve.onsetS;
  const movingKPerS = Math.abs(curve.driftKPerS) + (changeK / curve.tauS) * Math.exp(-recordedS / curve.tauS);
  if (
    recordedS < END_TIMES * curve.tauS ||
    Math.abs(curve.driftKPerS) * curve.tauS > END_DRIFT_SHARE * changeK
  )
    return { reason: 'end-not-reached', recordedS, movingKPerS };
  const squares = readings.map((r, i) => (isInRise(r, curve) ? (even.residualsK[i] ?? 0) ** 2 : 0));
  const offK = Math.sqrt(squares.reduce((a, b) => a + b, 0) / inRise);
  const { curve: best, tauStandardS } = settled(window);
  const unsure = tauStandardS > UNSURE_SHARE * best.tauS;
  if (unsure || offK > Math.max(OFF_NOISES * noiseK, OFF_SHARE * changeK))
    return { reason: 'not-first-order', offK, changeK };
  return null;
}

/**
 * An end that moves evenly tells most of the lag; one that truly curves, as on a plate that a thermostat keeps moving,
 * would be taken for lag. How much the time constant depends on it is part of what is not known of it.
 */
function settled({ even, bent }: Window): StepFit {
  const apartS = bent.curve.tauS - even.curve.tauS;
  const better = Math.abs(apartS) > CURVES * bent.tauStandardS ? bent : even;
  return { ...better, tauStandardS: Math.hypot(better.tauStandardS, apartS) };
}

function told(
  window: Window,
  originMs: number,
): { readonly found: TimeConstant; readonly curve: readonly StepPoint[] } {
  const { readings } = window;
  const { curve, residualsK, tauStandardS } = settled(window);
  const squares = residualsK.reduce((sum, k) => sum + k * k, 0);
  const found = {
    tauS: curve.tauS,
    standardS: tauStandardS,
    startC: curve.startC,
    endC: curve.startC + curve.riseK,
    onsetMs: originMs + curve.onsetS * 1000,
    driftKPerS: window.even.curve.driftKPerS,
    residualK: Math.sqrt(squares / readings.length),
    readings: readings.length,
  };
  const points = readings.map(({ tS, tC }, i) => ({
    tMs: originMs + tS * 1000,
    tC,
    residualK: residualsK[i] ?? 0,
  }));
  return { found, curve: points };
}
