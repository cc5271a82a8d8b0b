import {
  type Cement,
  type DryingStage,
  type DryingStageKind,
  dryingStageKinds,
  instructedS,
  ironStage,
} from './cement.ts';
import { type Curing, cured, paceAt, reachedMs } from './curing.ts';
import { type DryCheck, type LearnedHere, nextFactor } from './learn.ts';
import type { RangeWhy } from './range.ts';
import { whyRange } from './why.ts';

/** The clock of one coat: when it may come to each stage of its cement, as an honest range. */

export interface StageClock {
  readonly kind: DryingStageKind;
  /** When somebody said that it is dry, or that a later stage is; null: nobody did, or was mistaken. */
  readonly saidDryMs: number | null;
  readonly saidTackyMs: number | null;
  /** When it may be ready at the earliest, most likely, and at the latest; null: not as far as can be seen. */
  readonly earliestMs: number | null;
  readonly likelyMs: number | null;
  readonly latestMs: number | null;
}

export interface CoatClock {
  /** Towards `stage`. */
  readonly state: 'drying' | 'may-be-ready' | 'due' | 'dry';
  /** The stage that is asked about; null: every one was said to be dry. */
  readonly stage: DryingStageKind | null;
  readonly stages: readonly StageClock[];
  /** Counts as wet for an iron. */
  readonly wet: boolean;
  /** The air is such that it doesn't dry at all. */
  readonly stands: boolean;
  /** Why the range is as wide as it is, the most telling first. */
  readonly why: readonly RangeWhy[];
}

export interface CoatAsked {
  readonly cement: Pick<Cement, 'stages'>;
  readonly fromUtcMs: number;
  /** In any order; of those that contradict each other the later one counts. */
  readonly checks: readonly DryCheck[];
  readonly curing: Curing;
  readonly learned: LearnedHere;
  readonly nowUtcMs: number;
  /** The machine's clock was wrong while it dried: it may be further on by any time. */
  readonly clockLost: boolean;
}

/**
 * How a coat stands now. Without anything learned, in the instructions' own air, `likelyMs` is the instructions' time
 * exactly; the range holds with a probability of four in five.
 */
export function coatClock(asked: CoatAsked): CoatClock {
  const { cement, curing, nowUtcMs } = asked;
  const checks = [...asked.checks].sort((a, b) => a.atUtcMs - b.atUtcMs);
  const stages = cement.stages.map((stage) => stageClock(asked, checks, stage));
  const wet = isWet(cement, checks, stages, nowUtcMs);
  const towards = towardsOf(stages, wet, nowUtcMs);
  const stage = cement.stages.find(({ kind }) => kind === towards?.kind);
  return {
    state: towards === undefined ? 'dry' : stateOf(towards, nowUtcMs),
    stage: towards?.kind ?? null,
    stages,
    wet,
    stands: towards !== undefined && paceAt(curing, nowUtcMs).likely === 0,
    why: towards === undefined || stage === undefined ? [] : whyRange(asked, stage, towards),
  };
}

const orderOf = (kind: DryingStageKind): number => dryingStageKinds.indexOf(kind);

/** Whether a check says something of a stage: dry also of earlier ones, tacky also of later ones. */
const concerns = (check: DryCheck, kind: DryingStageKind): boolean =>
  check.found === 'dry' ? orderOf(check.stage) >= orderOf(kind) : orderOf(check.stage) <= orderOf(kind);

/** @param checks in the order of time */
function stageClock(asked: CoatAsked, checks: readonly DryCheck[], stage: DryingStage): StageClock {
  const { fromUtcMs, curing, nowUtcMs, clockLost } = asked;
  const { next } = asked.learned;
  const tacky = checks.filter((check) => check.found === 'tacky' && concerns(check, stage.kind));
  const above = Math.max(0, ...tacky.map((check) => factorAbove(asked, check)));
  const tackyMs = tacky.at(-1)?.atUtcMs ?? null;
  const when = (neededS: number, p: number, by: 'least' | 'likely' | 'most'): number | null => {
    const ms = reachedMs(curing, fromUtcMs, neededS * nextFactor(next, p, above), by);
    return ms === null ? null : Math.max(ms, tackyMs ?? ms);
  };
  const earliestMs = when(stage.fromS, 0.1, 'most');
  // Nobody knows how much longer it has dried: it may be ready by now.
  const byNowMs = Math.max(fromUtcMs, nowUtcMs, tackyMs ?? fromUtcMs);
  return {
    kind: stage.kind,
    saidDryMs: saidDryMs(checks, stage.kind),
    saidTackyMs: tacky.findLast((check) => check.stage === stage.kind)?.atUtcMs ?? null,
    earliestMs: clockLost ? Math.min(earliestMs ?? byNowMs, byNowMs) : earliestMs,
    likelyMs: when(instructedS(stage), 0.5, 'likely'),
    latestMs: when(stage.toS, 0.9, 'least'),
  };
}

/** What the coat's factor is above, since it was found tacky. */
function factorAbove({ cement, curing, fromUtcMs }: CoatAsked, check: DryCheck): number {
  const stage = cement.stages.find(({ kind }) => kind === check.stage);
  if (stage === undefined) return 0;
  // What is known of the air now may be more than what was known then.
  const curedS = Math.max(check.curedS, cured(curing, fromUtcMs, check.atUtcMs).likelyS);
  return curedS / instructedS(stage);
}

/** The first that said it since nobody has contradicted. */
function saidDryMs(checks: readonly DryCheck[], kind: DryingStageKind): number | null {
  let saidMs: number | null = null;
  for (const check of checks)
    if (concerns(check, kind)) saidMs = check.found === 'tacky' ? null : (saidMs ?? check.atUtcMs);
  return saidMs;
}

/**
 * The stage that is asked about: the latest whose likely time is past, else the first; none that somebody has said to be
 * dry. Who waits for the iron need not say "set to touch" first. A stage that was found tacky leaves the earlier ones
 * behind, but for the iron's while the coat counts as wet: that it is ready for one has to be said somewhere.
 */
function towardsOf(stages: readonly StageClock[], wet: boolean, nowUtcMs: number): StageClock | undefined {
  const tackyAt = stages.findLastIndex((stage) => stage.saidDryMs === null && stage.saidTackyMs !== null);
  const ironKind = wet ? ironStage({ stages })?.kind : undefined;
  const open = stages.filter(
    ({ kind, saidDryMs }, i) => saidDryMs === null && (i >= tackyAt || kind === ironKind),
  );
  return open.findLast(({ likelyMs }) => likelyMs !== null && nowUtcMs >= likelyMs) ?? open[0];
}

function stateOf({ likelyMs, latestMs }: StageClock, nowUtcMs: number): CoatClock['state'] {
  if (latestMs !== null && nowUtcMs >= latestMs) return 'due';
  return likelyMs !== null && nowUtcMs >= likelyMs ? 'may-be-ready' : 'drying';
}

/**
 * Wet until somebody said that an iron may go over it, or until its latest time is past. Once it was found tacky, at that
 * stage or at an earlier one, a person has to take that back by a word of that stage or of a later one. Where the
 * instructions give no time for an iron, only a word at their last stage counts.
 */
function isWet(
  cement: Pick<Cement, 'stages'>,
  checks: readonly DryCheck[],
  stages: readonly StageClock[],
  nowUtcMs: number,
): boolean {
  const iron = ironStage(cement);
  const clock = iron === null ? stages.at(-1) : stages.find(({ kind }) => kind === iron.kind);
  if (clock === undefined || clock.saidDryMs !== null) return false;
  if (iron === null) return true;
  const foundTacky = checks.some(
    ({ found, stage }, i) =>
      found === 'tacky' &&
      orderOf(stage) <= orderOf(iron.kind) &&
      !checks.slice(i + 1).some((later) => later.found === 'dry' && concerns(later, stage)),
  );
  return foundTacky || clock.latestMs === null || nowUtcMs < clock.latestMs;
}
