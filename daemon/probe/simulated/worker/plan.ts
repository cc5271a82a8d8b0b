import type { Seed } from '../random.ts';
import { lastFrom, type Scenario, type Turn } from '../scenario.ts';
import { workAt } from './bench.ts';
import type { Busy, Doing } from './doing.ts';
import type { SaidMark } from './marks.ts';
import type { Worker, WorkIronId } from './worker.ts';

/** All that a worker does, from a cold start on: the truth, and beside it what was said of it. */
export interface WorkPlan {
  readonly lengthS: number;
  readonly doings: Readonly<Record<WorkIronId, readonly Doing[]>>;
  readonly scenarios: Readonly<Record<WorkIronId, Scenario>>;
  readonly person: readonly { readonly atS: number; readonly is: Busy }[];
  /** In order of time. */
  readonly said: readonly SaidMark[];
}

/** The work of one seed: the same worker and seed do and say the same. */
export function planWork(worker: Worker, seed: Seed): WorkPlan {
  const { doings, person, said } = workAt(worker, seed);
  const scenario = (iron: WorkIronId): Scenario => ({
    name: `Simulated work, the ${iron} iron`,
    ambientC: worker.ambientC,
    lengthS: Number.MAX_SAFE_INTEGER,
    turns: doings[iron].map(turnOf),
    faults: [],
    hand: worker.hand,
  });
  const scenarios = { small: scenario('small'), big: scenario('big') };
  return { lengthS: worker.lengthS, doings, scenarios, person, said };
}

const turnOf = ({ atS, place, still, dialC, draws }: Doing): Turn => ({ atS, place, still, dialC, draws });

/** What was so of an iron so many seconds after the start; null before the first. */
export const doingAt = (plan: WorkPlan, iron: WorkIronId, tS: number): Doing | null =>
  plan.doings[iron][lastFrom(plan.doings[iron], tS)] ?? null;
