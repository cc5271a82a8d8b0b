/** Why something that was said of the work, or of a piece, can't be taken; in sentences. */

export const pieceSettingsWords = {
  noPiece: (id: string) => `There is no piece "${id}". The list of pieces shows those that there are.`,
  changed: (name: string, newest: number, basedOn: number) =>
    `"${name}" has been changed meanwhile: its newest version is ${newest}, and yours was made from ${basedOn}. Look at both, and save again.`,
} as const;

export const workRefusals = {
  whichIron: 'No iron is in hand. Say which iron this is about.',
  archived: (name: string) => `"${name}" is archived. Take it out of the archive first.`,
  noPiece: 'No piece is in hand. Say first which piece this is.',
  noArea: (area: string, piece: string) =>
    `"${piece}" has no area "${area}". Its map may have been changed: look at it again.`,
  noSide: (piece: string) => `"${piece}" has one side only: there is no other to turn up.`,
  nothingNext: (piece: string) =>
    `Nothing is proposed for "${piece}": choose the stage that is being worked, or no other area lacks it.`,
  noVisit: 'There is no such stay of the iron. The list of the piece shows those that there are.',
} as const;
