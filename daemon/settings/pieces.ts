import { checkPiece } from '../../shared/piece/check.ts';
import type { Piece, PieceDraft } from '../../shared/piece/piece.ts';
import type { UnattendedAfter } from '../../shared/watch/attended.ts';
import { pieceSettingsWords } from '../../shared/words/work.ts';
import { Refusal } from '../refusal.ts';
import { checked } from './change.ts';
import { nextVersion } from './next-version.ts';
import { currentPieces, type Settings } from './settings.ts';

/** Changes of the pieces, and of what is settled about the work. */

/** The newest version of a piece. Throws `Refusal` where there is none of this id. */
export function pieceOf(settings: Settings, id: string): Piece {
  const piece = currentPieces(settings).find((one) => one.id === id);
  if (piece === undefined) throw new Refusal('unknown', pieceSettingsWords.noPiece(id), 'piece');
  return piece;
}

/** Adds a version of a piece, made from the version `basedOn` (0: a new piece). Earlier ones stay as they are. */
export function withPiece(
  settings: Settings,
  draft: PieceDraft,
  head: { readonly id: string; readonly basedOn: number; readonly madeAt: string },
): { readonly settings: Settings; readonly piece: Piece } {
  const { id, basedOn, madeAt } = head;
  const version = nextVersion(settings.pieces, head, {
    none: pieceSettingsWords.noPiece(id),
    changed: (newest) => pieceSettingsWords.changed(draft.name, newest, basedOn),
  });
  const [fault] = checkPiece(draft);
  if (fault !== undefined) throw new Refusal('invalid', fault.message, fault.path);
  const piece = { ...draft, id, version, madeAt };
  return { settings: checked({ ...settings, pieces: [...settings.pieces, piece] }), piece };
}

export const withUnattended = (
  settings: Settings,
  unattended: UnattendedAfter,
): { readonly settings: Settings } => ({ settings: checked({ ...settings, unattended }) });
