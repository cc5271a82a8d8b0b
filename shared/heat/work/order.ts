import { otherSide, type Piece, type SideId } from '../../piece/piece.ts';
import type { HeatStage } from '../schedule.ts';
import type { AreaHeats } from './area-heat.ts';
import { heatOf } from './area-heats.ts';
import { compareLevels, levelOf } from './reached.ts';

/** The order of stages over both sides: the first gets no more than the initial shrink until the second has had its own. */

/** The stage of the lowest level of a schedule, the initial shrink; null where there is none. */
export const lowestStage = (stages: readonly HeatStage[]): HeatStage | null =>
  stages.reduce<HeatStage | null>((low, s) => (low === null || compareLevels(s, low) < 0 ? s : low), null);

/** The open cloth of a side. */
export const clothOf = (piece: Pick<Piece, 'areas'>, side: SideId): Piece['areas'] =>
  piece.areas.filter((area) => area.side === side && area.kind === 'cloth');

/**
 * Hotter than this on a side would be out of order now, degC: the low of the level after the lowest, while the other side
 * has cloth that has not reached the lowest. Edges and tapes don't count for it: they are tacked to the frame, and the
 * cloth between them pulls no less for that.
 * @returns null where nothing is out of order: one side only, one level only, or the other side has had its own
 */
export function capC(
  piece: Piece,
  heats: AreaHeats,
  stages: readonly HeatStage[],
  side: SideId,
): number | null {
  const other = otherSide(piece, side);
  const lowest = lowestStage(stages);
  if (other === null || lowest === null) return null;
  const next = lowestStage(stages.filter((stage) => compareLevels(stage, lowest) > 0));
  if (next === null) return null;
  const hasHad = clothOf(piece, other).every(
    ({ id }) => compareLevels(heatOf(heats, id).reached, lowest) >= 0,
  );
  if (hasHad) return null;
  return Math.min(...stages.filter((s) => levelOf(s) === levelOf(next)).map((s) => s.lowC));
}
