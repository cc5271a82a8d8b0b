import type { At } from '../heat/work/at.ts';
import type { Piece } from '../piece/piece.ts';
import type { Coat } from './drying.ts';

/** The same side of the same piece. */
export const isOnSide = (coat: Pick<Coat, 'piece' | 'side'>, at: Pick<At, 'piece' | 'side'>): boolean =>
  coat.piece === at.piece && coat.side === at.side;

/**
 * Whether a coat is where an iron works: on the area that was named, or on the whole side. Where the map was changed since,
 * and its area with it, a coat may be anywhere on its side.
 */
export function isThere(coat: Coat, at: At, pieces: readonly Piece[]): boolean {
  if (!isOnSide(coat, at)) return false;
  if (coat.area === null || coat.area === at.area) return true;
  return coat.pieceVersion !== at.version && isMoved(coat, at, pieces);
}

function isMoved({ piece, pieceVersion, area }: Coat, { version }: At, pieces: readonly Piece[]): boolean {
  const areaIn = (of: number): string =>
    JSON.stringify(
      pieces.find((one) => one.id === piece && one.version === of)?.areas.find(({ id }) => id === area),
    );
  return areaIn(pieceVersion) !== areaIn(version);
}
