import type { DryingStageKind } from './cement.ts';
import {
  bell,
  convolved,
  type Distribution,
  distributionOf,
  type Grid,
  gridLn,
  probabilityBelow,
  quantileLn,
} from './grid.ts';
import type { Learned } from './learned.ts';
import { normalBetween } from './normal.ts';

/**
 * What the taps on coats teach about a cement: in what part of the instructions' time it dries here. A tap tells only that
 * a coat was dry by then, or not yet, so that what was seen are intervals. The natural logarithm of a coat's factor is the
 * cement's own, plus what its day was off by, plus what the coat was off by; all about normally distributed, and some days
 * and coats are odd. What is believed of the cement's own is worked out on a grid.
 */

/** What somebody who touched a coat found. */
export interface DryCheck {
  readonly atUtcMs: number;
  readonly stage: DryingStageKind;
  readonly found: 'dry' | 'tacky';
  /** How far it had come by then, s at the instructions' conditions. */
  readonly curedS: number;
}

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

export interface LearnedHere {
  readonly learned: Learned;
  /** By what factor the next coat may dry, on the scale of its natural logarithm. */
  readonly next: Distribution;
}

/** Standard deviations of the factor's natural logarithm. */
export interface Belief {
  /** Before anybody touched a coat: the instructions are right, give or take this much. */
  readonly cementSd: number;
  /** One day differs from another: draught, how the cement was stirred, who put it on. */
  readonly daySd: number;
  /** One coat differs from another of the same day: how thick it is, and what was called dry. */
  readonly coatSd: number;
  /** The part of days, and of coats, that are odd, and how far off they are. */
  readonly odd: number;
  readonly oddSd: number;
}

/** Our own choices: no published figures of such scatter were to be had. */
export const usualBelief: Belief = { cementSd: 0.25, daySd: 0.12, coatSd: 0.09, odd: 0.05, oddSd: 0.8 };

/** Coats that were put on within this time of a day's first are of that day. */
const DAY_MS = 12 * 3_600_000;
/** Only the newest observations count, so that a cement that has changed is learned anew by and by. */
const OBSERVATIONS_KEPT = 200;
/** The cement's own factor lies from 0.22 to 4.5, a day's from 0.05 to 20. */
const cementGrid: Grid = { stepLn: 0.02, steps: 75 };
const dayGrid: Grid = { stepLn: 0.02, steps: 150 };
/** Where a day may be, seen from where the cement may be. */
const apartGrid: Grid = { stepLn: 0.02, steps: cementGrid.steps + dayGrid.steps };
/** A coat that was found further off is taken to be so far off. */
const FURTHEST_LN = 2.5;
/** Nobody finds the moment of drying closer than this. */
const NARROWEST_LN = 1e-6;

/** What the observations of one cement teach; without any the factor is 1 exactly. */
export function learn(observations: readonly DryObservation[], belief: Belief = usualBelief): LearnedHere {
  const told = observations
    .filter(({ aboveS, belowS }) => aboveS > 0 || belowS !== null)
    .sort((a, b) => a.fromUtcMs - b.fromUtcMs)
    .slice(-OBSERVATIONS_KEPT);
  const apart = gridLn(apartGrid).map((ln) => mixed(ln, belief.daySd, belief));
  let densities = gridLn(cementGrid).map((ln) => bell(ln, belief.cementSd));
  for (const day of daysOf(told)) densities = corrected(densities, dayLikelihoods(day, belief), apart);
  const cement = distributionOf(cementGrid, densities);
  const coat = gridLn(dayGrid).map((ln) => mixed(ln, Math.hypot(belief.daySd, belief.coatSd), belief));
  return {
    learned: {
      factor: told.length === 0 ? 1 : Math.exp(quantileLn(cement, 0.5)),
      low: Math.exp(quantileLn(cement, 0.1)),
      high: Math.exp(quantileLn(cement, 0.9)),
      observations: told.length,
    },
    next: distributionOf(apartGrid, convolved(densities, coat)),
  };
}

/**
 * The factor that the next coat stays below with a probability of `p`, where it is known to be above `above` already
 * (0: nothing is known).
 */
export function nextFactor(next: Distribution, p: number, above = 0): number {
  const gone = above > 0 ? probabilityBelow(next, Math.log(above)) : 0;
  return Math.max(above, Math.exp(quantileLn(next, gone + p * (1 - gone))));
}

/** How likely it is to be off by so much: usually, or because it is an odd one. */
const mixed = (ln: number, sd: number, { odd, oddSd }: Belief): number =>
  (1 - odd) * bell(ln, sd) + odd * bell(ln, oddSd);

/** @param observations in the order of time */
function daysOf(observations: readonly DryObservation[]): readonly (readonly DryObservation[])[] {
  const days: { fromUtcMs: number; seen: DryObservation[] }[] = [];
  for (const observation of observations) {
    const { fromUtcMs } = observation;
    const day = days.at(-1);
    if (day !== undefined && fromUtcMs - day.fromUtcMs <= DAY_MS) day.seen.push(observation);
    else days.push({ fromUtcMs, seen: [observation] });
  }
  return days.map(({ seen }) => seen);
}

/** How well each factor of a day goes with what was found on its coats; the best is 1. */
function dayLikelihoods(day: readonly DryObservation[], belief: Belief): readonly number[] {
  const ranges = day.map(rangeLn);
  const logs = gridLn(dayGrid).map((ln) =>
    ranges.reduce((sum, range) => sum + Math.log(coatLikelihood(range, ln, belief)), 0),
  );
  const best = Math.max(...logs);
  return logs.map((log) => Math.exp(log - best));
}

interface RangeLn {
  readonly from: number;
  readonly to: number;
}

/** Between which factors a coat dried. What contradicts itself tells only when it was dry. */
function rangeLn({ aboveS, belowS, stageS }: DryObservation): RangeLn {
  const ln = (s: number): number => Math.max(-FURTHEST_LN, Math.min(Math.log(s / stageS), FURTHEST_LN));
  if (belowS === null) return { from: ln(aboveS), to: Number.POSITIVE_INFINITY };
  if (aboveS <= 0 || aboveS >= belowS) return { from: Number.NEGATIVE_INFINITY, to: ln(belowS) };
  return { from: ln(aboveS), to: Math.max(ln(belowS), ln(aboveS) + NARROWEST_LN) };
}

function coatLikelihood({ from, to }: RangeLn, ln: number, { coatSd, odd, oddSd }: Belief): number {
  const within = (sd: number): number => normalBetween((from - ln) / sd, (to - ln) / sd);
  return odd === 0 ? within(coatSd) : (1 - odd) * within(coatSd) + odd * within(oddSd);
}

/** What is believed of the cement after a day, over all that the day itself may have been off by. The best is 1. */
function corrected(before: readonly number[], ofDay: readonly number[], apart: readonly number[]): number[] {
  const after = before.map((density, cement) => {
    let sum = 0;
    for (const [day, likelihood] of ofDay.entries())
      sum += likelihood * (apart[day - cement + apartFirst] ?? 0);
    return density * sum;
  });
  const best = Math.max(...after);
  return after.map((density) => density / best);
}

/** A day's point `i` and a cement's point `k` are apart by `i - k` from here. */
const apartFirst = apartGrid.steps - dayGrid.steps + cementGrid.steps;
