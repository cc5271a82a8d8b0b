import type { CalibrationPoint, PointKind } from './calibration.ts';
import { leastSquares } from './least-squares.ts';

/** Where a probe is to come to rest: at a reference point, or in the air of the room before a step. */
export type RestKind = PointKind | 'air';

/**
 * Follows a probe while the user waits at a reference point, until mean and spread have held over a window. Readings are
 * kept as sums, a second each, so that a fast probe costs no more than a slow one. The state survives JSON.
 */
export interface Steadiness<K extends RestKind = PointKind> {
  readonly kind: K;
  /** Sums are of differences from the first reading, so that they stay small, degC. */
  readonly originC: number | null;
  readonly seconds: readonly Second[];
  readonly lastMs: number;
  readonly lastC: number;
  /** The smallest change seen from one reading to the next, K, that can be a probe's step; null while none was. */
  readonly resolutionK: number | null;
}

interface Second {
  readonly fromMs: number;
  readonly n: number;
  readonly sum: number;
  readonly squares: number;
}

export interface Waiting {
  /** 0 to 1: how much of the window has held so far; 1 once it is steady, and only then. */
  readonly progress: number;
  readonly steady: boolean;
  /** Of the readings in the window; null while there are too few. */
  readonly meanC: number | null;
  readonly spreadK: number | null;
  readonly driftKPerMin: number | null;
  readonly readings: number;
  readonly resolutionK: number | null;
}

/** The reading must hold for so long, in whole seconds (our own choice: many time constants of a bare probe). */
export const WINDOW_S = 20;
const SECOND_MS = 1000;
/** Without a reading for this long, what came before says nothing of what comes, ms. */
export const GAP_MS = 3000;
/** Progress of a window that has filled, but still drifts. */
const NEARLY = 0.95;

/**
 * Standard deviation, K, and drift, K/min, under which a reading is steady (our own choice). Water holds its temperature;
 * a plate on a thermostat only nearly, at the top of its swing or while it loses heat slowly; air stirs.
 */
const SPREAD_K: Readonly<Record<RestKind, number>> = { ice: 0.3, boiling: 0.3, contact: 1, air: 0.5 };
const DRIFT_K_PER_MIN: Readonly<Record<RestKind, number>> = { ice: 0.5, boiling: 0.5, contact: 6, air: 2 };
/** Boards that count in whole degrees Celsius are the coarsest in use (common practice, no source), K; 1 and rounding. */
const COARSEST_K = 1.01;
/** A steady probe may flicker between two of its steps: at most half a step of standard deviation, and some. */
const FLICKER_STEPS = 0.6;
/** One step in mid-window looks like a drift of one and a half steps a window. */
const STEP_DRIFT = 1.5;

/** The spread up to which a point is taken, K: wider for a coarse probe by its own step. */
export const spreadBoundK = (kind: RestKind, resolutionK: number | null): number =>
  Math.max(SPREAD_K[kind], FLICKER_STEPS * (resolutionK ?? 0));

const driftBoundKPerMin = (kind: RestKind, resolutionK: number | null): number =>
  DRIFT_K_PER_MIN[kind] + (STEP_DRIFT * (resolutionK ?? 0) * 60) / WINDOW_S;

export const startWaiting = <K extends RestKind>(kind: K): Steadiness<K> => ({
  kind,
  originC: null,
  seconds: [],
  lastMs: 0,
  lastC: 0,
  resolutionK: null,
});

/**
 * Takes one more valid reading in (degC, uncorrected). After a gap the window begins anew; a value that is no number is
 * left out; a reading that was placed a little before the last one counts with it.
 */
export function addReading<K extends RestKind>(
  before: Steadiness<K>,
  tMs: number,
  readC: number,
): Steadiness<K> {
  if (!Number.isFinite(readC) || !Number.isFinite(tMs)) return before;
  // Adding 0 takes the sign off a negative zero, which JSON would lose.
  const plateC = readC + 0;
  if (before.originC === null || tMs - before.lastMs > GAP_MS) return firstReading(before, tMs, plateC);
  const atMs = Math.max(tMs, before.lastMs);
  const offK = plateC - before.originC;
  const last = before.seconds.at(-1);
  const same = last !== undefined && atMs - last.fromMs < SECOND_MS;
  const second = same
    ? { ...last, n: last.n + 1, sum: last.sum + offK, squares: last.squares + offK * offK }
    : { fromMs: nextSecond(last, atMs), n: 1, sum: offK, squares: offK * offK };
  const kept = same ? before.seconds.slice(0, -1) : before.seconds;
  const stepK = Math.abs(plateC - before.lastC);
  return {
    ...before,
    seconds: [...kept, second].filter((s) => atMs - s.fromMs < (WINDOW_S + 1) * SECOND_MS),
    lastMs: atMs,
    lastC: plateC,
    resolutionK: isStep(stepK) ? Math.min(stepK, before.resolutionK ?? stepK) : before.resolutionK,
  };
}

/** A larger change is a move of the probe, not its step. */
const isStep = (changeK: number): boolean => changeK > 0 && changeK <= COARSEST_K;

/** Seconds are counted from the first reading on, whenever in them one falls. */
const nextSecond = (last: Second | undefined, atMs: number): number =>
  last === undefined ? atMs : last.fromMs + Math.floor((atMs - last.fromMs) / SECOND_MS) * SECOND_MS;

const firstReading = <K extends RestKind>(
  before: Steadiness<K>,
  tMs: number,
  plateC: number,
): Steadiness<K> => ({
  ...before,
  originC: plateC,
  seconds: [{ fromMs: tMs, n: 1, sum: 0, squares: 0 }],
  lastMs: tMs,
  lastC: plateC,
});

/** How the waiting goes. */
export function waitingOf(state: Steadiness<RestKind>): Waiting {
  const { kind, originC, seconds, resolutionK, lastMs } = state;
  const all = summed(seconds);
  if (originC === null || all.n === 0)
    return {
      progress: 0,
      steady: false,
      meanC: null,
      spreadK: null,
      driftKPerMin: null,
      readings: 0,
      resolutionK,
    };
  const spreadK = spreadOf(all);
  const driftKPerMin = driftOf(seconds);
  const boundK = spreadBoundK(kind, resolutionK);
  const heldMs = lastMs - heldSince(seconds, boundK);
  const drifts = driftKPerMin === null || Math.abs(driftKPerMin) > driftBoundKPerMin(kind, resolutionK);
  const steady = heldMs >= WINDOW_S * SECOND_MS && spreadK <= boundK && !drifts;
  const share = heldMs / (WINDOW_S * SECOND_MS);
  return {
    progress: steady ? 1 : Math.min(share, NEARLY),
    steady,
    meanC: originC + all.sum / all.n,
    spreadK,
    driftKPerMin,
    readings: all.n,
    resolutionK,
  };
}

/** How the waiting goes now: once readings have stopped coming, what was seen of them no longer counts. */
export const waitingNow = (waiting: Steadiness<RestKind>, nowMs: number): Waiting =>
  waitingOf(nowMs - waiting.lastMs > GAP_MS ? startWaiting(waiting.kind) : waiting);

/** What a point keeps of the waiting: its fields of the same names; null while there is no reading. */
export function measuredOf({ meanC, spreadK, readings, resolutionK }: Waiting): Measured | null {
  if (meanC === null || spreadK === null) return null;
  return { readingC: meanC, readingSpreadK: spreadK, readings, resolutionK };
}

export type Measured = Pick<CalibrationPoint, 'readingC' | 'readingSpreadK' | 'readings' | 'resolutionK'>;

/** Since when the readings up to now have kept within the spread, ms. */
function heldSince(seconds: readonly Second[], boundK: number): number {
  let fromMs = seconds.at(-1)?.fromMs ?? 0;
  for (let i = seconds.length - 1; i >= 0; i -= 1) {
    if (spreadOf(summed(seconds.slice(i))) > boundK) break;
    fromMs = seconds[i]?.fromMs ?? fromMs;
  }
  return fromMs;
}

type Sum = Omit<Second, 'fromMs'>;

const summed = (seconds: readonly Second[]): Sum =>
  seconds.reduce<Sum>(
    (all, s) => ({ n: all.n + s.n, sum: all.sum + s.sum, squares: all.squares + s.squares }),
    { n: 0, sum: 0, squares: 0 },
  );

/** Standard deviation, K; none of a single reading. */
function spreadOf({ n, sum, squares }: Sum): number {
  if (n < 2) return 0;
  return Math.sqrt(Math.max(0, squares - (sum * sum) / n) / (n - 1));
}

/** Slope through the seconds' means, K/min; null while they are fewer than three. */
function driftOf(seconds: readonly Second[]): number | null {
  const [first] = seconds;
  if (first === undefined || seconds.length < 3) return null;
  const points = seconds.map((s) => ({ x: (s.fromMs - first.fromMs) / SECOND_MS, y: s.sum / s.n }));
  const line = leastSquares(points, 0);
  return line === null ? null : line.b2 * 60;
}
