/** Why a command was not taken, in sentences. */
export const refusals = {
  noSuchAlarm: 'No such alarm stands. The list of standing alarms shows those that do.',
  alreadySeen: 'This alarm has been acknowledged already, or no longer stands.',
  notSounding: 'Only an alarm that has not been acknowledged yet can be silenced.',
  noSuchStage: 'The heat schedule of this iron has no such stage.',
  noPiece: 'No piece is in hand. Say first which piece this is, and which side is up.',
  nothingToUndo: 'There is nothing to take back: no mark was made since this iron is being watched.',
} as const;
