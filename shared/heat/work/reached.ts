import type { HeatStage } from '../schedule.ts';
import type { ReachedStage } from './visit.ts';

/**
 * The stage that fabric has reached: the highest by its low; of stages with one low the one that was being worked, else
 * the first of the schedule.
 * @param stages of the heat schedule
 * @param fabricC the highest that the fabric came to, degC; null where nothing was read
 * @param workedStageId null where no stage was being worked
 * @returns null where it reached the low of none
 */
export function stageReachedAt(
  stages: readonly HeatStage[],
  fabricC: number | null,
  workedStageId: string | null,
): ReachedStage | null {
  if (fabricC === null) return null;
  const highest = stages.reduce<HeatStage | null>((best, stage) => {
    if (fabricC < stage.lowC || (best !== null && stage.lowC < best.lowC)) return best;
    return best === null || stage.lowC > best.lowC || stage.id === workedStageId ? stage : best;
  }, null);
  if (highest === null) return null;
  const { id, name, lowC, targetC } = highest;
  return { id, name, lowC, targetC };
}

/** Below the level of every stage. */
const NO_LEVEL = Number.NEGATIVE_INFINITY;

/**
 * How high a stage is, degC: by its target. Stages of one temperature for several purposes (tack, initial shrink and
 * tape smoothing) are of one level.
 */
export const levelOf = (reached: Pick<ReachedStage, 'targetC'> | null): number =>
  reached?.targetC ?? NO_LEVEL;

/** Less than zero where `a` is of a lower level than `b`, zero where both are of one. No stage is the lowest. */
export const compareLevels = (
  a: Pick<ReachedStage, 'targetC'> | null,
  b: Pick<ReachedStage, 'targetC'> | null,
): number => (levelOf(a) === levelOf(b) ? 0 : levelOf(a) < levelOf(b) ? -1 : 1);
