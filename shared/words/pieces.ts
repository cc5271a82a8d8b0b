import type { AreaKind } from '../piece/piece.ts';

/** What the page says of pieces and of the work on them. "Covered" is ours to say; "tight" is only ever the user's. */

export const pieceWords = {
  title: 'Piece',
  all: 'All pieces',
  recent: 'Pieces worked last',
  reading: 'Reading the pieces …',
  notRead: (why: string) => `The pieces could not be read. ${why}`,
  notReadYet:
    'What earlier sessions did to this piece is still being read: what is drawn here may lack some.',
  asItWas: 'As it was read last: the daemon can’t be reached.',
  noSuch: 'There is no piece at this address. It may be of another book.',
  none: 'No piece yet',
  noneMeans:
    'Make one: a name is enough, and it begins with two ends, a middle and edge strips on each side. Then tap where you iron, or press “next”.',
  noneInHand: 'No piece is in hand. Press the one that lies on the bench.',
  notInHand: (piece: string) => `${piece} is not in hand: marks go to the piece that is.`,
  thisNow: 'This piece now',
  thisNowOf: (piece: string) => `This piece now: ${piece}`,
  lookAt: (piece: string) => `Look at ${piece}`,
  away: (count: number) => (count === 1 ? '1 piece put away' : `${count} pieces put away`),
  visits: 'Visits, and putting them right',
  add: 'New piece',
  edit: 'Change its map',
  shrinkage: 'What the stages do to the cloth',
  sides: 'Its sides',
  back: 'Back to the pieces',
  version: (version: number, when: string) => `Its map is version ${version}, made ${when}.`,
  backTo: (piece: string) => `Back to ${piece}`,
  legend: 'What the drawing says',
} as const;

/** Where an iron works: piece, side, area. */
export const whereWords = {
  on: (piece: string, side: string, area: string | null) =>
    area === null ? `${piece}, ${side}` : `${piece}, ${side}, ${area}`,
  /** Goes on a sentence about an iron. */
  at: (where: string) => `, on ${where}`,
  presumed: (where: string) => `${where} (presumed)`,
  reached: (stage: string) => `${stage} reached`,
  noneReached: 'no stage reached yet',
  notOn: 'no area marked',
} as const;

export const areaKindWords: Readonly<Record<AreaKind, string>> = {
  cloth: 'open cloth',
  edge: 'bonded edge',
  tape: 'tape, bonded',
};

export const areaWords = {
  none: 'nothing yet',
  presumed: 'presumed',
  presumedShort: '?',
  here: 'here',
  next: 'next',
  hereShort: '●',
  nextShort: '▶',
  hereFull: 'the iron is here',
  nextFull: 'proposed next',
  laps: (laps: number) => (laps === 1 ? '1 lap' : `${laps} laps`),
  peak: (peak: string) => `peak ${peak}`,
  keys: 'Arrow keys go from area to area, Enter marks.',
} as const;

export const legendWords = {
  none: 'no stage reached',
  level: (level: number, stages: string) => `${level}: ${stages}`,
  presumed: 'presumed: passed by “next” and not confirmed; tap it to confirm',
  bonded: 'bonded edge or tape: the cement limit holds',
  here: 'the iron is here',
  next: 'proposed next',
} as const;

export const actWords = {
  title: 'What you do',
  next: 'next',
  noStage: 'choose the stage first',
  noNext: 'no other area lacks this stage',
  stages: 'Stage being worked',
  turned: 'turned over',
  oneSided: 'it has one side',
  lapDone: 'lap done',
  lapOn: (side: string) => `on ${side}`,
  onRest: 'on its rest',
  undo: 'undo',
  onWork: 'on the work',
  offWork: 'off the work',
  takeUp: (iron: string) => `Take up ${iron}`,
  inHand: (iron: string) => `${iron} is in hand.`,
  noneInHand: 'No iron was taken up yet.',
  irons: 'Which iron is in hand',
} as const;

export const nextNoteWords = {
  noStage: 'Choose the stage first: “next” has marked nothing.',
  toStages: 'To the stages',
} as const;

/** What was asked, for what waits or was refused. */
export const workCommandWords = {
  piece: (piece: string) => `this piece now: ${piece}`,
  area: (area: string) => `on ${area}`,
  next: (area: string) => `next: ${area}`,
  nextUnnamed: 'next',
  turned: 'turned over',
  lapDone: 'lap done',
  inHand: (iron: string) => `${iron} taken up`,
  onWork: 'on the work',
  offWork: 'off the work',
  onRest: 'on its rest',
  undo: 'undo the last mark',
  stage: (name: string) => `stage ${name}`,
  undoNext: 'undo the “next” of the same press',
  tight: (side: string, by: string) => `${side} is tight, says ${by}`,
  overruled: (by: string) => `order overruled by ${by}`,
  corrected: (by: string) => `a visit put right by ${by}`,
} as const;

export const orderWords = {
  cap: (cap: string, side: string, other: string) =>
    `No hotter than ${cap} on ${side} before ${other} has had its initial shrink: else it is pulled crooked for good.`,
  overrule: 'Overrule the order',
  reason: 'Why',
  reasonMissing: 'Say in a few words why: it stands on the record.',
  overruled: (by: string, why: string, when: string) => `Order overruled by ${by}, ${when}: ${why}`,
  send: 'Overrule, and write it down',
} as const;

export const tightWords = {
  tight: (side: string) => `Tight, by eye and hand: ${side}`,
  short: 'Tight, by eye and hand',
  said: (by: string, when: string) => `Tight, says ${by}, ${when}.`,
  covered: (stage: string, laps: string) => `Covered: all of it has had ${stage}, ${laps}.`,
  notCovered: 'Not covered yet: some areas have had no stage.',
  send: 'Write it down as mine',
} as const;

export const personWords = {
  by: 'Your name',
  missing: 'Enter your name: it is written down as yours.',
  tooLong: (most: number) => `At most ${most} characters.`,
  never: 'Never mind',
} as const;

export const dwellWords = {
  time: (area: string, time: string) => `On ${area} for ${time}`,
  side: 'this side',
  ofMost: (time: string, most: string) => `${time} of ${most} at most`,
  noLimit: 'no limit: that takes the size of the piece and of the iron’s plate',
  over: (area: string, most: string) => `Longer on ${area} than its size asks for (${most}): move on.`,
  byMarks: 'By your marks. Rest on one spot is not measured.',
  byMotion: 'By the iron’s motion.',
} as const;

export const pieceItemWords = {
  title: (count: number) =>
    count === 1
      ? '1 area suspect: examine it as the manual says'
      : `${count} areas suspect: examine them as the manual says`,
  link: (peak: string, when: string) => `${peak}, ${when}`,
  unknown: 'an item that is not read yet',
  toRecords: 'Open items are closed in Records, by a named person’s finding.',
} as const;

export const visitWords = {
  title: 'Visits',
  unassigned: 'Unassigned: not marked on any piece',
  none: 'No visit yet.',
  line: (when: string, length: string, iron: string) => `${when}, ${length}, ${iron}`,
  place: (place: string) => `on ${place}`,
  wholeSide: 'the whole side',
  nowhere: 'nowhere on a piece',
  otherPiece: 'another piece',
  was: (place: string) => `marked as ${place}`,
  correctedBy: (by: string, when: string) => `put right by ${by}, ${when}`,
  lap: 'lap done',
  presumed: 'presumed',
  putRight: 'Put right',
  putRightOf: (visit: string) => `Put right: ${visit}`,
  toSide: 'Side',
  toArea: 'Area',
  onNone: 'On no piece',
  send: 'Write the correction down',
  beside: 'The original stays beside it.',
  simulated: 'simulated',
} as const;

/** What an area has had, over all its visits. */
export const hadWords = {
  title: 'What each area has had',
  covered: (stage: string) => `covered at ${stage}`,
  noStage: 'no stage reached',
  presumed: 'presumed',
  peak: (peak: string, guard: string) => `peak of the plate ${peak} ±${guard}`,
  contact: (contact: string, inBand: string) => `${contact} in contact, ${inBand} of it in the stage’s band`,
  laps: (laps: number) => (laps === 1 ? '1 lap' : `${laps} laps`),
  last: (when: string) => `last heated ${when}`,
  nothing: (areas: string) => `Nothing yet: ${areas}.`,
} as const;

export const workKeyWords = {
  next: 'next area (Piece)',
  turned: 'turned over (Piece)',
  lapDone: 'lap done (Piece)',
  onRest: 'on its rest (Piece)',
  undo: 'undoes the last mark (Piece)',
  arrowKeys: 'Arrows',
  arrows: 'go from area to area; Enter marks',
} as const;

export const shrinkageWords = {
  title: 'What the stages do to the cloth',
  means:
    'Heat takes the slack out of loose polyester cloth. The hotter it has been, the more it has drawn in: a second pass at the same heat adds little, a hotter one goes on from there.',
  loose:
    'These figures are for loose cloth, free to draw in on all sides. Cloth that is bonded to a frame pulls on the frame instead. They explain a stage; they are no measure of any area, and they stand on no record.',
  stage: 'Stage',
  at: 'Plate at',
  shrinks: 'Loose cloth draws in by',
  lessThan: (percent: string) => `less than ${percent} %`,
  atLeast: (percent: string) => `at least ${percent} %`,
  about: (percent: string) => `about ${percent} %`,
  source: (source: string) => `Points from ${source}.`,
  between: 'Between the points the figure is read off a straight line.',
  tight:
    'Whether cloth is tight is seen and felt, not worked out: say so on the Piece view, and it is written down as yours.',
  manual: 'Your covering process’s approved manual decides which stages there are and how hot.',
  back: 'Back to the piece',
  noSchedule: 'No iron is being watched: there is no heat schedule to explain.',
} as const;
