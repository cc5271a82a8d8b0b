import {
  type Cement,
  type DryingStage,
  type DryingStageKind,
  dryingStageKinds,
  ironStage,
} from './cement.ts';
import { type Curing, paceAt, reachedMs } from './curing.ts';
import { type DryCheck, type LearnedHere, nextFactor } from './learn.ts';
import type { RangeWhy } from './range.ts';

/** The clock of one coat. */

export interface StageClock {
  readonly kind: DryingStageKind;
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
  /** The first stage that nobody has said to be dry; null: every one was. */
  readonly stage: DryingStageKind | null;
  readonly stages: readonly StageClock[];
  /** Counts as wet for an iron. */
  readonly wet: boolean;
  /** The air is such that it doesn't dry at all. */
  readonly stands: boolean;
  /** Why the range is as wide as it is, the most telling first. */
  readonly why: readonly RangeWhy[];
}

export interface CoatAsk {
  readonly cement: Pick<Cement, 'stages'>;
  readonly fromUtcMs: number;
  readonly checks: readonly DryCheck[];
  readonly curing: Curing;
  readonly learned: LearnedHere;
  readonly nowUtcMs: number;
  /** The machine's clock was set while it dried. */
  readonly clockSet: boolean;
}

/** Checks may come in any order; of two that contradict each other the later one counts. */
export function coatClock(ask: CoatAsk): CoatClock {
  const { cement, nowUtcMs, curing } = ask;
  const stages = stageClocks(ask);
  const stage = stages.find(({ saidDryMs }) => saidDryMs === null) ?? null;
  return {
    state: stage === null ? 'dry' : stateOf(stage, nowUtcMs),
    stage: stage?.kind ?? null,
    stages,
    wet: isWet(cement, stages, nowUtcMs),
    stands: stage !== null && paceAt(curing, nowUtcMs).likely === 0,
    why: ['days-differ'],
  };
}

/** The time that the instructions give, s: the middle where they give a range. */
export const instructedS = ({ fromS, toS }: DryingStage): number => (fromS + toS) / 2;

function stageClocks({ cement, fromUtcMs, checks, curing, learned }: CoatAsk): readonly StageClock[] {
  return cement.stages.map((stage) => {
    const { kind, fromS, toS } = stage;
    return {
      kind,
      saidDryMs: lastSaid(checks, kind, 'dry'),
      saidTackyMs: lastSaid(checks, kind, 'tacky'),
      earliestMs: reachedMs(curing, fromUtcMs, fromS * nextFactor(learned.next, 0.1), 'most'),
      likelyMs: reachedMs(curing, fromUtcMs, instructedS(stage) * nextFactor(learned.next, 0.5), 'likely'),
      latestMs: reachedMs(curing, fromUtcMs, toS * nextFactor(learned.next, 0.9), 'least'),
    };
  });
}

const orderOf = (kind: DryingStageKind): number => dryingStageKinds.indexOf(kind);

function lastSaid(
  checks: readonly DryCheck[],
  kind: DryingStageKind,
  found: DryCheck['found'],
): number | null {
  const said = checks.filter(
    (check) =>
      check.found === found &&
      (found === 'dry' ? orderOf(check.stage) >= orderOf(kind) : check.stage === kind),
  );
  return said.reduce<number | null>((last, { atUtcMs }) => Math.max(last ?? atUtcMs, atUtcMs), null);
}

function stateOf({ likelyMs, latestMs }: StageClock, nowUtcMs: number): CoatClock['state'] {
  if (latestMs !== null && nowUtcMs >= latestMs) return 'due';
  return likelyMs !== null && nowUtcMs >= likelyMs ? 'may-be-ready' : 'drying';
}

function isWet(cement: Pick<Cement, 'stages'>, stages: readonly StageClock[], nowUtcMs: number): boolean {
  const needed = ironStage(cement);
  const clock = stages.find(({ kind }) => kind === needed?.kind);
  if (clock === undefined) return false;
  if (clock.saidDryMs !== null) return false;
  return clock.saidTackyMs !== null || clock.latestMs === null || nowUtcMs < clock.latestMs;
}
