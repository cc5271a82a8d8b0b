import type { Learned } from '../messages/cure.ts';
import type { DryingStageKind } from './cement.ts';
import { normalBelow } from './normal.ts';

/** What the taps on coats teach about a cement: in what part of the instructions' time it dries here. */

/** What one coat told of one stage, in seconds at the instructions' conditions. */
export interface DryObservation {
  /** When the coat was put on: those of about the same time had the same day. */
  readonly fromUtcMs: number;
  /** It was still tacky then; 0: nobody found it tacky. */
  readonly aboveS: number;
  /** It was dry then; null: nobody found it dry. */
  readonly belowS: number | null;
  /** The instructions' own time for the stage. */
  readonly stageS: number;
}

/** By what factor the next coat may dry: probabilities of being below `exp(fromLn + i * stepLn)`. */
export interface NextCoat {
  readonly fromLn: number;
  readonly stepLn: number;
  readonly below: readonly number[];
}

export interface LearnedHere {
  readonly learned: Learned;
  readonly next: NextCoat;
}

/** What somebody who touched a coat found. */
export interface DryCheck {
  readonly atUtcMs: number;
  readonly stage: DryingStageKind;
  readonly found: 'dry' | 'tacky';
  /** How far it had come by then, s at the instructions' conditions. */
  readonly curedS: number;
}

/** What is believed before anybody has touched a coat, all on the scale of the factor's natural logarithm. */
export interface Belief {
  /** The instructions are right, give or take this much. */
  readonly cementSd: number;
  /** One day differs from another: how thick it was put on, draught, the shelf that it stood on. */
  readonly daySd: number;
  /** One coat differs from another of the same day. */
  readonly coatSd: number;
  /** How many days are odd, and how far off such a day is. */
  readonly oddDays: number;
  readonly oddSd: number;
}

/** Our own choices: no published figures of such scatter were to be had. */
export const usualBelief: Belief = { cementSd: 0.25, daySd: 0.12, coatSd: 0.09, oddDays: 0.05, oddSd: 0.8 };

/** Coats that were put on within this time of the day's first are of one day. */
const DAY_MS = 12 * 3_600_000;
/** Only the newest days count, so that a cement that has changed is learned anew by and by. */
const DAYS_KEPT = 60;
/** The grid of the logarithm, to either side: factors from 0.2 to 4.5 of a cement, from 0.05 to 20 of one day. */
const STEP_LN = 0.02;
const CEMENT_STEPS = 75;
const DAY_STEPS = 150;

/** What the observations of one cement teach; without any the factor is 1 exactly. */
export function learn(observations: readonly DryObservation[], belief: Belief = usualBelief): LearnedHere {
  const told = observations.filter(({ aboveS, belowS }) => aboveS > 0 || belowS !== null);
  const spread = grid(DAY_STEPS + CEMENT_STEPS).map((ln) => dayDensity(ln, belief));
  const posterior = grid(CEMENT_STEPS).map((ln) => bell(ln, belief.cementSd));
  for (const day of daysOf(told).slice(-DAYS_KEPT)) {
    const ofDay = grid(DAY_STEPS).map((ln) => dayLikelihood(day, ln, belief));
    for (const [i, before] of posterior.entries()) posterior[i] = before * overlap(ofDay, spread, i);
    scale(posterior);
  }
  const cement = cumulative(posterior, -CEMENT_STEPS * STEP_LN);
  const coat = grid(DAY_STEPS).map((ln) => dayDensity(ln, withCoat(belief)));
  return {
    learned: {
      factor: told.length === 0 ? 1 : Math.exp(quantileLn(cement, 0.5)),
      low: Math.exp(quantileLn(cement, 0.1)),
      high: Math.exp(quantileLn(cement, 0.9)),
      observations: told.length,
    },
    next: cumulative(convolved(posterior, coat), -(CEMENT_STEPS + DAY_STEPS) * STEP_LN),
  };
}

/**
 * The factor that the next coat stays below with a probability of `p`, where it is known to be above `above` already
 * (0: nothing is known).
 */
export function nextFactor(next: NextCoat, p: number, above = 0): number {
  const gone = above > 0 ? probabilityBelow(next, Math.log(above)) : 0;
  return Math.max(above, Math.exp(quantileLn(next, gone + p * (1 - gone))));
}

const grid = (steps: number): number[] =>
  Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * STEP_LN);

const bell = (ln: number, sd: number): number => Math.exp(-((ln / sd) ** 2) / 2) / sd;

const dayDensity = (ln: number, { daySd, oddDays, oddSd }: Belief): number =>
  (1 - oddDays) * bell(ln, daySd) + oddDays * bell(ln, oddSd);

const withCoat = (belief: Belief): Belief => ({
  ...belief,
  daySd: Math.hypot(belief.daySd, belief.coatSd),
  oddSd: Math.hypot(belief.oddSd, belief.coatSd),
});

function daysOf(observations: readonly DryObservation[]): readonly (readonly DryObservation[])[] {
  const days: DryObservation[][] = [];
  for (const observation of [...observations].sort((a, b) => a.fromUtcMs - b.fromUtcMs)) {
    const day = days.at(-1);
    const first = day?.[0];
    if (day !== undefined && first !== undefined && observation.fromUtcMs - first.fromUtcMs <= DAY_MS)
      day.push(observation);
    else days.push([observation]);
  }
  return days;
}

/** How well a day's factor goes with what was found on its coats. */
function dayLikelihood(day: readonly DryObservation[], ln: number, { coatSd }: Belief): number {
  let likelihood = 1;
  for (const { aboveS, belowS, stageS } of day) {
    const from = aboveS > 0 ? normalBelow((Math.log(aboveS / stageS) - ln) / coatSd) : 0;
    const to = belowS === null ? 1 : normalBelow((Math.log(belowS / stageS) - ln) / coatSd);
    likelihood *= to - from;
  }
  return likelihood;
}

/** For the cement's factor number `i`: how well the day goes with it, over all that the day's own may have been. */
function overlap(ofDay: readonly number[], spread: readonly number[], i: number): number {
  let sum = 0;
  const shift = i - CEMENT_STEPS;
  for (const [k, likelihood] of ofDay.entries()) sum += likelihood * (spread[k - shift + CEMENT_STEPS] ?? 0);
  return sum;
}

function scale(values: number[]): void {
  const most = Math.max(...values);
  for (const [i, value] of values.entries()) values[i] = value / most;
}

function convolved(a: readonly number[], b: readonly number[]): readonly number[] {
  const sums = Array.from({ length: a.length + b.length - 1 }, () => 0);
  for (const [i, x] of a.entries())
    for (const [k, y] of b.entries()) sums[i + k] = (sums[i + k] ?? 0) + x * y;
  return sums;
}

function cumulative(densities: readonly number[], fromLn: number): NextCoat {
  const below = [0];
  let sum = 0;
  for (let i = 1; i < densities.length; i += 1) {
    sum += ((densities[i - 1] ?? 0) + (densities[i] ?? 0)) / 2;
    below.push(sum);
  }
  return { fromLn, stepLn: STEP_LN, below: below.map((part) => part / sum) };
}

function quantileLn({ fromLn, stepLn, below }: NextCoat, p: number): number {
  const i = Math.max(
    1,
    below.findIndex((part) => part >= p),
  );
  const [from, to] = [below[i - 1] ?? 0, below[i] ?? 1];
  return fromLn + (i - 1 + (to > from ? (p - from) / (to - from) : 0)) * stepLn;
}

function probabilityBelow({ fromLn, stepLn, below }: NextCoat, ln: number): number {
  const at = (ln - fromLn) / stepLn;
  if (at <= 0) return 0;
  const i = Math.floor(at);
  const from = below[i] ?? 1;
  return from + ((below[i + 1] ?? 1) - from) * (at - i);
}
