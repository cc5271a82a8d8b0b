import { type Cement, instructedS } from './cement.ts';
import type { DryCheck, DryObservation } from './learn.ts';

/**
 * What the taps on one coat tell of its cement: for each stage that somebody touched it at, between which times it dried.
 * Found dry and tacky again later, it is tacky: the first touch was mistaken.
 */
export function observationsOf(
  { stages }: Pick<Cement, 'stages'>,
  { fromUtcMs, checks }: { readonly fromUtcMs: number; readonly checks: readonly DryCheck[] },
): readonly DryObservation[] {
  const inOrder = [...checks].sort((a, b) => a.atUtcMs - b.atUtcMs);
  return stages.flatMap((stage) => {
    const own = inOrder.filter((check) => check.stage === stage.kind);
    const lastTacky = own.findLastIndex(({ found }) => found === 'tacky');
    const belowS = own[lastTacky + 1]?.curedS ?? null;
    const aboveS = Math.max(0, ...own.filter(({ found }) => found === 'tacky').map(({ curedS }) => curedS));
    return aboveS > 0 || belowS !== null ? [{ fromUtcMs, aboveS, belowS, stageS: instructedS(stage) }] : [];
  });
}
