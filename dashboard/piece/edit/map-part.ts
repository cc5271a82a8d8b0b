import type { Edited } from '../../../shared/piece/edit.ts';
import type { PieceDraft } from '../../../shared/piece/piece.ts';

/** What each part of the map's editor is given. */
export interface MapPartProps {
  readonly draft: PieceDraft;
  /** Takes a change over, or says why it can't be made; true where it was made. */
  readonly apply: (edited: Edited) => boolean;
}
