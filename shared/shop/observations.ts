import type { Cement, DryingStage } from '../cure/cement.ts';
import type { DryObservation } from '../cure/learn.ts';
import { observationOf } from '../cure/observe.ts';
import type { Coat } from './drying.ts';

/**
 * What the taps on all coats tell of a cement. Coats of a version whose time for the stage, or whose conditions, were others
 * teach nothing of this one, and neither do those that were put on by mistake.
 * @param versions every version of the cement
 */
export function taughtOf(
  coats: readonly Coat[],
  cement: Cement,
  versions: readonly Cement[],
): readonly DryObservation[] {
  return coats.flatMap((coat) => {
    const put = versions.find(({ version }) => version === coat.cementVersion);
    if (coat.cement !== cement.id || coat.ended?.why === 'mistake' || put === undefined) return [];
    const stages = cement.stages.filter((stage) => isSameStage(cement, put, stage));
    const checks = coat.checks.filter(({ teaches, curedS }) => teaches && curedS > 0);
    return observationOf({ stages }, { fromUtcMs: coat.fromUtcMs, checks }) ?? [];
  });
}

function isSameStage(cement: Cement, put: Cement, stage: DryingStage): boolean {
  const then = put.stages.find(({ kind }) => kind === stage.kind);
  return (
    then?.fromS === stage.fromS &&
    then.toS === stage.toS &&
    put.kind === cement.kind &&
    put.atC === cement.atC &&
    put.atRhPct === cement.atRhPct &&
    put.energyKJPerMol === cement.energyKJPerMol
  );
}
