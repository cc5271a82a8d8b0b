import { cellsOf } from '../../piece/cells.ts';
import type { Area, Piece, SideId } from '../../piece/piece.ts';
import type { AreaHeats } from './area-heat.ts';
import { heatOf } from './area-heats.ts';
import { clothOf } from './order.ts';
import { compareLevels } from './reached.ts';
import type { ReachedStage } from './visit.ts';

/** What several areas have had together. */
export interface SharedHeat {
  /** The stage that all of them have had, by its level; null: some have had none. */
  readonly reached: ReachedStage | null;
  /** Laps over them at that stage, weighted by their size; 0 where there is none. */
  readonly laps: number;
}

/** What a side has had: its open cloth, since edges and tapes lie on the frame and draw on nothing. */
export const sideHeat = (piece: Pick<Piece, 'areas'>, heats: AreaHeats, side: SideId): SharedHeat =>
  sharedHeat(clothOf(piece, side), heats);

/**
 * What areas have had together. An area that is further on is taken to have had as many laps at the shared stage as those
 * that stand at it, and its laps at its own stage on top: how many it really had there is not kept.
 */
export function sharedHeat(areas: readonly Area[], heats: AreaHeats): SharedHeat {
  const [lowest] = areas.map(({ id }) => heatOf(heats, id).reached).toSorted((a, b) => compareLevels(a, b));
  if (lowest === undefined || lowest === null) return { reached: null, laps: 0 };
  const counted = areas.map((area) => ({ area, heat: heatOf(heats, area.id) }));
  const laps = counted.map(({ area, heat }) => ({ area, laps: heat.lapsAtStage }));
  const isFurther = (i: number): boolean => compareLevels(counted[i]?.heat.reached ?? null, lowest) > 0;
  const there = meanBySize(laps.filter((_, i) => !isFurther(i)));
  return {
    reached: lowest,
    laps: there + meanBySize(laps.map((l, i) => (isFurther(i) ? l : { ...l, laps: 0 }))),
  };
}

/** The mean of laps over areas, by their size in cells; 0 of none. */
export function meanBySize(counted: readonly { readonly area: Area; readonly laps: number }[]): number {
  const cells = counted.reduce((sum, { area }) => sum + cellsOf(area), 0);
  return cells === 0 ? 0 : counted.reduce((sum, { area, laps }) => sum + cellsOf(area) * laps, 0) / cells;
}
