import { leastSquares } from '../../calibration/least-squares.ts';

/**
 * How far a check pad still has to go: its thermocouple comes to the plate's temperature as a first-order lag does, the
 * rest of the way being divided by e in each time constant.
 */

/** The mean of some readings, in the middle of their time. */
export interface Level {
  readonly tMs: number;
  readonly levelC: number;
}

export interface Settling {
  /** How far it still has to rise, K; below 0 it falls. */
  readonly remainingK: number;
  /** Standard error of that, from how the levels scatter about the fit, K. */
  readonly standardK: number;
  /** How fast it went over all of them, by a straight line, K/s: holds for what is no such approach too. */
  readonly slopeKPerS: number;
}

/** Fewer levels than this give no error for a fit of two figures. */
export const LEAST_LEVELS = 4;

/**
 * The rest of a first-order approach with the time constant `tauS`: least squares of `level = end - remaining *
 * exp(-t / tau)`, with t from the last level on, which is linear in both.
 * @returns null of fewer than four levels, or where they fall on one moment
 */
export function settlingOf(levels: readonly Level[], tauS: number): Settling | null {
  const last = levels.at(-1);
  if (last === undefined || levels.length < LEAST_LEVELS) return null;
  const sinceS = ({ tMs }: Level): number => (tMs - last.tMs) / 1000;
  const overTime = levels.map((l) => ({ x: sinceS(l), y: l.levelC }));
  const overWay = levels.map((l) => ({ x: Math.exp(-sinceS(l) / tauS), y: l.levelC }));
  const straight = leastSquares(overTime, 0);
  const approach = leastSquares(overWay, 1);
  if (approach?.scatter == null || straight === null) return null;
  return { remainingK: -approach.b2, standardK: approach.scatter.u2, slopeKPerS: straight.b2 };
}

/**
 * How long a rise took for the first 63.2 % of what it has come to so far, s: no more than the time constant of a
 * first-order approach, and all of it once that is over. Null where it didn't rise.
 */
export function riseS(levels: readonly Level[]): number | null {
  const [first] = levels;
  const last = levels.at(-1);
  if (first === undefined || last === undefined || last.levelC <= first.levelC) return null;
  const atC = first.levelC + (1 - Math.exp(-1)) * (last.levelC - first.levelC);
  const i = levels.findIndex((l) => l.levelC >= atC);
  const before = levels[i - 1];
  const after = levels[i];
  if (before === undefined || after === undefined) return null;
  const share = (atC - before.levelC) / (after.levelC - before.levelC);
  return (before.tMs + share * (after.tMs - before.tMs) - first.tMs) / 1000;
}
