import { type At, placeName } from '../../../shared/heat/work/at.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import type { Coat } from '../../../shared/shop/drying.ts';
import { coatAmiss } from '../../../shared/words/drying.ts';
import { currentPieces, type Settings } from '../../settings/settings.ts';

/** Where a coat is, in the user's names: by the map as it was when it was put on. */
export function coatPlace(
  settings: Settings,
  { piece: id, pieceVersion, side, area }: Pick<Coat, 'piece' | 'pieceVersion' | 'side' | 'area'>,
): { readonly pieceName: string; readonly placeName: string } {
  const piece =
    settings.pieces.find((one) => one.id === id && one.version === pieceVersion) ??
    currentPieces(settings).find((one) => one.id === id);
  if (piece === undefined) return { pieceName: coatAmiss.noPiece, placeName: coatAmiss.noPiece };
  const named = {
    pieceName: piece.name,
    sideName: piece.sides.length > 1 ? (piece.sides[side - 1] ?? '') : '',
    areaName: piece.areas.find((one) => one.id === area)?.name ?? area,
  };
  return { pieceName: piece.name, placeName: placeName(named) };
}

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
