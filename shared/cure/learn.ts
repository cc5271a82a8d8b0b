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
 * a coat was dry by then, or not yet, so that what was seen are intervals. The natural logarithm of a coat's factor at a
 * stage is the cement's own, plus what its day was off by, plus what the coat was off by at all its stages, plus what that
 * stage was off by; all about normally distributed, and some days and coats are odd. What is believed of the cement's own is
 * worked out on a grid.
 */

/** What somebody who touched a coat found. */
export interface DryCheck {
  readonly atUtcMs: number;
  readonly stage: DryingStageKind;
  readonly found: 'dry' | 'tacky';
  /** How far it had come by then, s at the instructions' conditions. */
  readonly curedS: number;
}

/** What one coat told. */
export interface DryObservation {
  /** When the coat was put on: those of about the same time had the same day. */
  readonly fromUtcMs: number;
  /** Of each stage that somebody touched it at. */
  readonly stages: readonly StageObservation[];
}

/** What one coat told of one stage, in seconds at the instructions' conditions. */
export interface StageObservation {
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
  /** One coat differs from another of the same day at all its stages: how thick it is. No less than a step of the grid. */
  readonly coatSd: number;
  /** One stage of a coat differs from another: what was called dry, and how well the instructions' times go together. */
  readonly stageSd: number;
  /** The part of days, and of coats, that are odd, and how far off they are: odd coats at each stage for itself. */
  readonly odd: number;
  readonly oddSd: number;
}

/** Our own choices: no published figures of such scatter were to be had. */
export const usualBelief: Belief = {
  cementSd: 0.25,
  daySd: 0.12,
  coatSd: 0.07,
  stageSd: 0.06,
  odd: 0.05,
  oddSd: 0.8,
};

/** Coats that were put on within this time of a day's first are of that day. */
const DAY_MS = 12 * 3_600_000;
/** Only the newest coats count, so that a cement that has changed is learned anew by and by. */
const COATS_KEPT = 200;
/** The cement's own factor lies from 0.22 to 4.5, a day's from 0.05 to 20. */
const cementGrid: Grid = { stepLn: 0.02, steps: 75 };
const dayGrid: Grid = { stepLn: 0.02, steps: 150 };
/** A coat is off from its day by no more than this many steps to either side. */
const COAT_STEPS = 20;
const coatGrid: Grid = { stepLn: 0.02, steps: COAT_STEPS };
/** Where a coat of a day may be. */
const ofDayGrid: Grid = { stepLn: 0.02, steps: dayGrid.steps + COAT_STEPS };
/** Where a day may be, seen from where the cement may be. */
const apartGrid: Grid = { stepLn: 0.02, steps: cementGrid.steps + dayGrid.steps };
/** A stage that was found further off is taken to be so far off. */
const FURTHEST_LN = 2.5;
/** Nobody finds the moment of drying closer than this. */
const NARROWEST_LN = 1e-6;

/** What the observations of one cement teach; without any the factor is 1 exactly. */
export function learn(observations: readonly DryObservation[], belief: Belief = usualBelief): LearnedHere {
  const told = observations
    .map(({ fromUtcMs, stages }) => ({ fromUtcMs, stages: stages.filter(tells) }))
    .filter(({ stages }) => stages.length > 0)
    .sort((a, b) => a.fromUtcMs - b.fromUtcMs)
    .slice(-COATS_KEPT);
  const apart = gridLn(apartGrid).map((ln) => mixed(ln, belief.daySd, belief));
  let densities = gridLn(cementGrid).map((ln) => bell(ln, belief.cementSd));
  for (const day of daysOf(told)) densities = corrected(densities, dayLikelihoods(day, belief), apart);
  const cement = distributionOf(cementGrid, densities);
  const nextSd = Math.hypot(belief.daySd, belief.coatSd, belief.stageSd);
  const coat = gridLn(dayGrid).map((ln) => mixed(ln, nextSd, belief));
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

const tells = ({ aboveS, belowS }: StageObservation): boolean => aboveS > 0 || belowS !== null;

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
  const coats = day.map(({ stages }) => coatLikelihoods(stages.map(rangeLn), belief));
  const logs = gridLn(dayGrid).map((_, i) =>
    coats.reduce((sum, likelihoods) => sum + Math.log(likelihoods[i] ?? 0), 0),
  );
  const best = Math.max(...logs);
  return logs.map((log) => Math.exp(log - best));
}

interface RangeLn {
  readonly from: number;
  readonly to: number;
}

/** Between which factors a coat came to a stage. What contradicts itself tells only when it was dry. */
function rangeLn({ aboveS, belowS, stageS }: StageObservation): RangeLn {
  const ln = (s: number): number => Math.max(-FURTHEST_LN, Math.min(Math.log(s / stageS), FURTHEST_LN));
  if (belowS === null) return { from: ln(aboveS), to: Number.POSITIVE_INFINITY };
  if (aboveS <= 0 || aboveS >= belowS) return { from: Number.NEGATIVE_INFINITY, to: ln(belowS) };
  return { from: ln(aboveS), to: Math.max(ln(belowS), ln(aboveS) + NARROWEST_LN) };
}

/**
 * How well each factor of a day goes with what was found on one coat: a usual coat is off by one and the same at all its
 * stages, over all that this may have been; so touching it at four of them doesn't make it four coats.
 */
function coatLikelihoods(
  ranges: readonly RangeLn[],
  { coatSd, stageSd, odd, oddSd }: Belief,
): readonly number[] {
  const within = (sd: number) => (ln: number) =>
    ranges.reduce((product, { from, to }) => product * normalBetween((from - ln) / sd, (to - ln) / sd), 1);
  const atFactor = gridLn(ofDayGrid).map(within(stageSd));
  const offBy = gridLn(coatGrid).map((ln) => bell(ln, coatSd));
  const all = offBy.reduce((a, b) => a + b, 0);
  const ofOdd = odd === 0 ? () => 0 : within(oddSd);
  return gridLn(dayGrid).map((ln, day) => {
    let sum = 0;
    for (let coat = 0; coat < offBy.length; coat += 1)
      sum += (offBy[coat] ?? 0) * (atFactor[day + coat] ?? 0);
    return ((1 - odd) * sum) / all + odd * ofOdd(ln);
  });
}

/** What is believed of the cement after a day, over all that the day itself may have been off by. The best is 1. */
function corrected(before: readonly number[], ofDay: readonly number[], apart: readonly number[]): number[] {
  const after = before.map((density, cement) => {
    let sum = 0;
    for (let day = 0; day < ofDay.length; day += 1)
      sum += (ofDay[day] ?? 0) * (apart[day - cement + apartFirst] ?? 0);
    return density * sum;
  });
  const best = Math.max(...after);
  return after.map((density) => density / best);
}

/** A day's point `i` and a cement's point `k` are apart by `i - k` from here. */
const apartFirst = apartGrid.steps - dayGrid.steps + cementGrid.steps;
