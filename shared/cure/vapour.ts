import { type Cement, ironStage } from './cement.ts';
import type { CoatClock } from './clock.ts';

/** So much of the latest time its vapour counts as burning: one coat in ten takes longer than that time. Our own choice. */
const BURNS_FOR = 1.5;

/**
 * Whether a coat's vapour can burn: while it counts as wet for an iron, and beyond that until half as long again as its latest
 * time for one is past, unless a person has said that it is ready for one.
 */
export function mayBurn({
  cement,
  clock,
  fromUtcMs,
  nowUtcMs,
}: {
  readonly cement: Pick<Cement, 'flammable'>;
  readonly clock: Pick<CoatClock, 'stages' | 'wet'>;
  readonly fromUtcMs: number;
  readonly nowUtcMs: number;
}): boolean {
  if (!cement.flammable) return false;
  if (clock.wet) return true;
  const stage = ironStage(clock);
  if (stage === null || stage.saidDryMs !== null) return false;
  return stage.latestMs === null || nowUtcMs - fromUtcMs < BURNS_FOR * (stage.latestMs - fromUtcMs);
}
