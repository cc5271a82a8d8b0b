import type { HeatSchedule } from '../../shared/heat/schedule.ts';
import type { ReachedStage } from '../../shared/heat/work/visit.ts';
import type { HatchName } from '../parts/hatch.tsx';

/** How a stage is drawn: stages of one target temperature are one level, and the hotter, the denser the hatching. */

/** More levels than these look like the hottest of them; their numbers differ. */
const levelHatches = ['stage-1', 'stage-2', 'stage-3', 'stage-4'] as const satisfies readonly HatchName[];

export interface Level {
  /** From 1 on, the coolest first. */
  readonly number: number;
  /** Names of its stages, in the schedule's order. */
  readonly stages: readonly string[];
}

const targets = ({ stages }: HeatSchedule): readonly number[] =>
  [...new Set(stages.map((stage) => stage.targetC))].toSorted((a, b) => a - b);

export const levelsOf = (schedule: HeatSchedule): readonly Level[] =>
  targets(schedule).map((c, i) => ({
    number: i + 1,
    stages: schedule.stages.filter((stage) => stage.targetC === c).map((stage) => stage.name),
  }));

/** The level of a stage as it was when it was reached: the hottest of today's that is not hotter, the first at least. */
export function levelOf(reached: Pick<ReachedStage, 'targetC'> | null, schedule: HeatSchedule): number {
  if (reached === null) return 0;
  return Math.max(1, targets(schedule).filter((c) => c <= reached.targetC).length);
}

/** Null: nothing is hatched. */
export const levelHatch = (level: number): HatchName | null =>
  level <= 0 ? null : (levelHatches[Math.min(level, levelHatches.length) - 1] ?? null);
