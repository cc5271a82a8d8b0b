import { otherSide, type Piece } from '../../piece/piece.ts';
import { imbalanceWords } from '../../words/imbalance.ts';
import type { Balance } from './balance.ts';

/** What an imbalance is in a sentence, for the alarm and the page; empty where nothing is ahead. */
export function imbalanceText(piece: Pick<Piece, 'sides'>, balance: Balance): string {
  if (balance.kind !== 'ahead') return '';
  const { what, side, byLaps } = balance;
  const laps = Math.max(1, Math.round(byLaps));
  const nameOf = (of: number): string => piece.sides[of - 1] ?? '';
  if (what === 'side') {
    const other = otherSide(piece, side);
    return other === null ? '' : imbalanceWords.ahead({ ahead: nameOf(side), behind: nameOf(other), laps });
  }
  const of = piece.sides.length > 1 ? nameOf(side) : '';
  const [ahead, behind] = what === 'first-end' ? (['first', 'last'] as const) : (['last', 'first'] as const);
  return imbalanceWords.ahead({
    ahead: imbalanceWords.end(of, ahead),
    behind: imbalanceWords.end(of, behind),
    laps,
  });
}
