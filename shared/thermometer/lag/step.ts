import { type Fitted, fitCurve } from './least-squares.ts';

/** A probe's answer to a step of what it touches: the curve, and its fit to readings. */

export interface StepReading {
  readonly tS: number;
  readonly tC: number;
}

/** Level before, rise to come, when it began, time constant, and how the end itself moves: its pace, and the pace of that. */
export interface StepCurve {
  readonly startC: number;
  readonly riseK: number;
  readonly onsetS: number;
  readonly tauS: number;
  readonly driftKPerS: number;
  readonly bendKPerS2: number;
}

/**
 * The answer of a first-order lag to a step whose end goes on in a slow curve: of a rise of 1 to an end at rest,
 * 1 - exp(-t/tau), 63.2 % after one time constant.
 */
export function stepAnswerC(curve: StepCurve, tS: number): number {
  const { startC, riseK, onsetS, tauS, driftKPerS, bendKPerS2 } = curve;
  const sinceS = tS - onsetS;
  if (sinceS <= 0) return startC;
  const covered = -Math.expm1(-sinceS / tauS);
  const ramp = sinceS - tauS * covered;
  // The answer to t^2 / 2 is the integral of the answer to t, and so on.
  const bend = (sinceS * sinceS) / 2 - tauS * ramp;
  return startC + riseK * covered + driftKPerS * ramp + bendKPerS2 * bend;
}

export interface StepFit {
  readonly curve: StepCurve;
  /** What is left of each reading, K. */
  readonly residualsK: readonly number[];
  /** Standard uncertainty of the time constant, s. */
  readonly tauStandardS: number;
}

/** The logarithm of the time constant is fitted, so that it stays above 0. */
const TAU = 3;

/**
 * Fits the curve to readings in order of time, from a first guess; null where they don't determine it.
 * @param bends whether the end may move in a curve, or only evenly
 */
export function fitStep(readings: readonly StepReading[], guess: StepCurve, bends: boolean): StepFit | null {
  const even = [guess.startC, guess.riseK, guess.onsetS, Math.log(guess.tauS), guess.driftKPerS];
  const first = bends ? [...even, guess.bendKPerS2] : even;
  const fitted = fitCurve(
    (p, i, slopes) => offCurve(readings[i], curveOf(p), slopes),
    readings.length,
    first,
  );
  if (fitted === null) return null;
  const curve = curveOf(fitted.parameters);
  if (!(curve.tauS > 0 && Number.isFinite(curve.tauS))) return null;
  const residualsK = readings.map((r) => r.tC - stepAnswerC(curve, r.tS));
  return { curve, residualsK, tauStandardS: curve.tauS * standardOf(fitted, residualsK) };
}

const curveOf = ([
  startC = 0,
  riseK = 0,
  onsetS = 0,
  logTau = 0,
  driftKPerS = 0,
  bendKPerS2 = 0,
]: readonly number[]): StepCurve => ({
  startC,
  riseK,
  onsetS,
  tauS: Math.exp(logTau),
  driftKPerS,
  bendKPerS2,
});

function offCurve(reading: StepReading | undefined, curve: StepCurve, slopes: number[]): number {
  if (reading === undefined) return 0;
  const { riseK, onsetS, tauS, driftKPerS, bendKPerS2 } = curve;
  const sinceS = reading.tS - onsetS;
  slopes.fill(0);
  slopes[0] = 1;
  if (sinceS > 0) {
    const left = Math.exp(-sinceS / tauS);
    const covered = 1 - left;
    const ramp = sinceS - tauS * covered;
    const pace = (left * sinceS) / tauS;
    // By the logarithm of tau.
    const rampByTau = tauS * (pace - covered);
    slopes[1] = covered;
    slopes[2] = -((riseK * left) / tauS + driftKPerS * covered + bendKPerS2 * ramp);
    slopes[TAU] = -riseK * pace + driftKPerS * rampByTau - bendKPerS2 * tauS * (ramp + rampByTau);
    slopes[4] = ramp;
    slopes[5] = (sinceS * sinceS) / 2 - tauS * ramp;
  }
  return reading.tC - stepAnswerC(curve, reading.tS);
}

/**
 * Standard uncertainty of the logarithm of the time constant. Residuals that follow one another (an unsteady end, a
 * coarse probe) tell less than as many independent ones: by (1 + r) / (1 - r) for a correlation r of neighbours.
 */
function standardOf({ squares, inverseDiagonal }: Fitted, residualsK: readonly number[]): number {
  const freedom = residualsK.length - inverseDiagonal.length;
  if (freedom <= 0) return Number.POSITIVE_INFINITY;
  let together = 0;
  for (let i = 1; i < residualsK.length; i++) together += (residualsK[i] ?? 0) * (residualsK[i - 1] ?? 0);
  const r = squares > 0 ? Math.min(Math.max(together / squares, 0), 0.95) : 0;
  return Math.sqrt(((squares / freedom) * (inverseDiagonal[TAU] ?? Number.NaN) * (1 + r)) / (1 - r));
}
