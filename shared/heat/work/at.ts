import type { Spot } from './visit.ts';

/** Where an iron works, as far as the user said, with what the watch has to know of that place. */
export interface At extends Spot {
  /** Passed by "next", or gone on with after a break, and not confirmed. */
  readonly presumed: boolean;
  readonly pieceName: string;
  readonly sideName: string;
  /** Null where no area was named. */
  readonly areaName: string | null;
  /** On an edge or a tape: the cement limit holds. */
  readonly bonded: boolean;
  /** The time that the area should take at most, ms; null where that can't be said. */
  readonly limitMs: number | null;
}

/** What is known of the piece in hand from all that it has had, in whatever session. */
export interface PieceFacts {
  /** Hotter than this would be out of order on the side that is up, degC; null: nothing is. */
  readonly capC: number | null;
  /** What is ahead of what, as a sentence (`imbalanceText`); empty while it is even. */
  readonly imbalance: string;
}

export const noFacts: PieceFacts = { capC: null, imbalance: '' };

/** Piece, side and area in the user's names; of a piece with one side that is not said. */
export const placeName = ({
  pieceName,
  sideName,
  areaName,
}: Pick<At, 'pieceName' | 'sideName' | 'areaName'>): string =>
  [pieceName, sideName, areaName].filter((name) => name !== null && name !== '').join(', ');

/** The same place, whatever is known of it. */
export const isSameSpot = (a: Spot | null, b: Spot | null): boolean =>
  a === b || (a !== null && b !== null && a.piece === b.piece && a.side === b.side && a.area === b.area);
