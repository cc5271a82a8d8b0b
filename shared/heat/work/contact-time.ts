import { cellsOf, type Place } from '../../piece/cells.ts';
import type { Piece } from '../../piece/piece.ts';

/** How long the iron may stay on an area: scaled by how often its sole goes into it. */

/** Time for as much cloth as lies under the sole, s (our own starting value): a slow pass, and one over it again. */
const SOLE_S = 4;
/** Less than this is not worth looking up for, s (our own choice). */
const LEAST_S = 10;

/**
 * The time that an area should take at most in one lap, ms.
 * @param piece with its size; the grid divides it into equal cells
 * @param soleCm2 area of the iron's sole, cm2; null where it was not told
 * @returns null where a size is not known
 */
export function areaLimitMs(
  piece: Pick<Piece, 'lengthCm' | 'widthCm' | 'rows' | 'columns'>,
  area: Pick<Place, 'rows' | 'columns'>,
  soleCm2: number | null,
): number | null {
  const { lengthCm, widthCm } = piece;
  if (lengthCm === null || widthCm === null || soleCm2 === null || soleCm2 <= 0) return null;
  const areaCm2 = (lengthCm * widthCm * cellsOf(area)) / cellsOf(piece);
  return 1000 * Math.max(LEAST_S, SOLE_S * (areaCm2 / soleCm2));
}
