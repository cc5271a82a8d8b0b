/** Why something that was said of a cement, a coat or the air can't be taken; in sentences. */

export const cementRefusals = {
  none: (id: string) => `There is no cement "${id}". Setup shows those that there are.`,
  changed: (name: string, newest: number, basedOn: number) =>
    `"${name}" has been changed meanwhile: its newest version is ${newest}, and yours was made from ${basedOn}. Look at both, and save again.`,
  archived: (name: string) => `"${name}" is archived. Take it out of the archive first.`,
} as const;

export const coatRefusals = {
  none: 'There is no such coat, or its clock was taken back. The Bench page shows those that there are.',
  ended: 'The clock of this coat has ended already.',
  twice: (place: string) => `${place} is named twice.`,
  noStage: (stage: string, cement: string) =>
    `The instructions of "${cement}" give no time for "${stage}". Its stages stand in Setup, under Cements.`,
  saidDry: 'This coat was said to be dry at this stage already. Take that back first.',
  noFire: (cement: string) =>
    `Nothing is asked about "${cement}": its vapour does not burn by what Setup says of it.`,
  nothingToTakeBack: 'There is no such tap to take back.',
  touched:
    'A coat of this start was touched or ended since, and taking the start back would delete that too. End each coat as a mistake instead: that can be taken back.',
  forecastOrder: 'The hours of a forecast must rise from line to line.',
} as const;

/** A coat that can't be shown as it should be. */
export const coatAmiss = {
  noCement: (place: string, cement: string) =>
    `The coat on ${place} is of a cement ("${cement}") that the settings do not have any more. Treat it as wet, and its vapour as one that burns; test it by touch.`,
  noPiece: 'a piece that the settings do not have any more',
} as const;

/** A coat where an alarm or the question about vapour tells of it: cement and place. */
export const coatName = (cement: string, place: string): string => `${cement} on ${place}`;
