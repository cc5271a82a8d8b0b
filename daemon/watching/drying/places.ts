import { placeName } from '../../../shared/heat/work/at.ts';
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
