import type { At } from '../../../shared/heat/work/at.ts';
import { areaLimitMs } from '../../../shared/heat/work/contact-time.ts';
import type { Iron } from '../../../shared/iron/iron.ts';
import { type Area, isBonded, type Piece, type SideId } from '../../../shared/piece/piece.ts';

/** Where an iron works, with what its watch has to know of that place. */
export const atOf = (
  piece: Piece,
  side: SideId,
  area: Area | null,
  { iron, presumed }: { readonly iron: Iron; readonly presumed: boolean },
): At => ({
  piece: piece.id,
  version: piece.version,
  side,
  area: area?.id ?? null,
  presumed,
  pieceName: piece.name,
  sideName: piece.sides.length > 1 ? (piece.sides[side - 1] ?? '') : '',
  areaName: area?.name ?? null,
  bonded: area !== null && isBonded(area),
  limitMs: area === null ? null : areaLimitMs(piece, area, iron.soleCm2 ?? null),
});
