/** What is said of maps of pieces that don't make sense, and the names that areas begin with. Counts are from one. */

export const pieceCheckWords = {
  sideMissing: (area: string, side: number) =>
    `"${area}" is on side ${side}, but the piece has one side: put it on side 1, or give the piece a second side.`,
  outside: (area: string, rows: number, columns: number) =>
    `"${area}" goes beyond the grid of ${rows} rows and ${columns} columns: place it inside.`,
  idTwice: (id: string) => `"${id}" names two areas: each needs an id of its own, on both sides together.`,
  overlap: (area: string, other: string) =>
    `"${area}" and "${other}" lie over each other: only tapes may lie over other areas.`,
  noCloth: (side: string) => `"${side}" has no area of open cloth: each side needs one at least.`,
} as const;

export const pieceEditWords = {
  noSuchArea: (id: string) => `The piece has no area "${id}". Choose one of those drawn.`,
  grid: (rows: number, columns: number) =>
    `A side is divided into 1 to ${rows} rows and 1 to ${columns} columns of bays, in whole numbers.`,
  edgeAcross: (area: string) =>
    `"${area}" is an edge that lies between the bays. Leave it out first, or add it as a tape.`,
  fewToMerge: 'Choose two areas at least to merge.',
  mergeSides: 'Only areas of one side can be merged.',
  mergeKinds: 'Only areas of one kind can be merged: cloth with cloth, edge with edge, tape with tape.',
  mergeShape: 'Only areas that make a rectangle together, without gaps, can be merged.',
  lastCloth: (side: string) =>
    `This is the last area of open cloth on "${side}": each side needs one at least.`,
  name: (most: number) => `A name takes 1 to ${most} characters.`,
  tapePlace: (rows: number, columns: number) =>
    `A tape lies along whole cells of the grid of ${rows} rows and ${columns} columns: place it inside.`,
  tooMany: (most: number) => `A piece has at most ${most} areas. Leave some out or merge some first.`,
} as const;

/** First and last are the ends of the piece as drawn, from left to right. */
export const areaNames = {
  firstEnd: 'First end',
  middle: 'Middle',
  lastEnd: 'Last end',
  upperEdge: 'Upper edge',
  lowerEdge: 'Lower edge',
  firstEdge: 'Edge at first end',
  lastEdge: 'Edge at last end',
  bay: (column: number) => `Bay ${column}`,
  bayInRow: (row: number, column: number) => `Bay ${String.fromCodePoint(64 + row)}${column}`,
} as const;
