import { type Cement, instructedS } from './cement.ts';
import type { DryCheck, DryObservation } from './learn.ts';

/**
 * What the taps on one coat tell of its cement: for each stage that somebody touched it at, between which times it dried.
 * Found dry and tacky again later, it is tacky: the first touch was mistaken. Null: nothing.
 */
export function observationOf(
  { stages }: Pick<Cement, 'stages'>,
  { fromUtcMs, checks }: { readonly fromUtcMs: number; readonly checks: readonly DryCheck[] },
): DryObservation | null {
  const inOrder = [...checks].sort((a, b) => a.atUtcMs - b.atUtcMs);
  const told = stages.flatMap((stage) => {
    const own = inOrder.filter((check) => check.stage === stage.kind);
    const lastTacky = own.findLastIndex(({ found }) => found === 'tacky');
    const belowS = own[lastTacky + 1]?.curedS ?? null;
    const aboveS = Math.max(0, ...own.filter(({ found }) => found === 'tacky').map(({ curedS }) => curedS));
    return aboveS > 0 || belowS !== null ? [{ aboveS, belowS, stageS: instructedS(stage) }] : [];
  });
  return told.length === 0 ? null : { fromUtcMs, stages: told };
}
