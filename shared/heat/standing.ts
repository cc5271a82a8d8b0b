import { COLD_C } from '../thermometer/thermometer.ts';
import type { HeatSchedule } from './schedule.ts';

/** Where a plate temperature stands among the stages and limits of a schedule. */
export interface PlaceAmongStages {
  readonly kind: 'cold' | 'below' | 'in-stage' | 'between' | 'above' | 'over-limit' | 'no-reading';
  /** Names of the stages whose band holds it. */
  readonly stages: readonly string[];
}

/**
 * Places a temperature; a limit counts as passed from `guardBandK` under it on (JCGM 106).
 * @param plateC null where there is no valid reading
 */
export function placeAmongStages(
  plateC: number | null,
  schedule: Pick<HeatSchedule, 'stages' | 'fabricLimitC'>,
  guardBandK: number,
): PlaceAmongStages {
  const nowhere = (kind: PlaceAmongStages['kind']): PlaceAmongStages => ({ kind, stages: [] });
  if (plateC === null) return nowhere('no-reading');
  if (plateC >= schedule.fabricLimitC - guardBandK) return nowhere('over-limit');
  if (plateC < COLD_C) return nowhere('cold');
  const stages = schedule.stages.filter((s) => plateC >= s.lowC && plateC <= s.highC).map((s) => s.name);
  if (stages.length > 0) return { kind: 'in-stage', stages };
  if (schedule.stages.every((s) => plateC < s.lowC)) return nowhere('below');
  return nowhere(schedule.stages.every((s) => plateC > s.highC) ? 'above' : 'between');
}
