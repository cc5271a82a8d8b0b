import { otherSide, type Piece, type SideId } from '../../piece/piece.ts';
import { balanceWords } from '../../words/balance.ts';
import type { Ahead, Balance } from './balance.ts';

/** What an imbalance is in a sentence, for the alarm and the page; empty where nothing is ahead. */
export const imbalanceText = (piece: Piece, balance: Balance): string =>
  balance.kind === 'ahead' ? aheadText(piece, balance) : '';

function aheadText(piece: Piece, { what, side, byLaps }: Ahead): string {
  const name = sideName(piece, side);
  const laps = balanceWords.laps(byLaps);
  if (what === 'side') return balanceWords.sideAhead(name, laps, sideName(piece, otherSide(piece, side)));
  const ends = [endName(piece, side, 'first'), endName(piece, side, 'last')] as const;
  const [ahead, behind] = what === 'first-end' ? ends : [ends[1], ends[0]];
  return balanceWords.endAhead(ahead, name, laps, behind);
}

const sideName = ({ sides }: Pick<Piece, 'sides'>, side: SideId | null): string =>
  (side === null ? undefined : sides[side - 1]) ?? balanceWords.otherSide;

/** By the area that makes up an end where that is one, else as it is drawn. */
function endName(piece: Pick<Piece, 'areas'>, side: SideId, end: 'first' | 'last'): string {
  const cloth = piece.areas.filter((area) => area.side === side && area.kind === 'cloth');
  const edge = (area: (typeof cloth)[number]): number =>
    end === 'first' ? area.column : -(area.column + area.columns);
  const outermost = Math.min(...cloth.map(edge));
  const [only, ...others] = cloth.filter((area) => edge(area) === outermost);
  if (only !== undefined && others.length === 0) return only.name;
  return end === 'first' ? balanceWords.firstEnd : balanceWords.lastEnd;
}
