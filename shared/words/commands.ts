/** Why a command can't be taken, in sentences. */
export const commandWords = {
  noIron: (id: string) => `No iron "${id}" is being watched. The list of irons shows those that are.`,
  alreadyRecording: (session: string) => `This iron is being recorded already, as session ${session}.`,
  notRunning: (session: string) =>
    `No session "${session}" is running. The list of sessions shows the one that is.`,
  unseen: (iron: string) =>
    `"${iron}" would be left without a probe and go, but an alarm of it has not been seen yet. Acknowledge that first.`,
  chosenAlready: 'A device has been chosen already. Start the program again to choose another.',
  noSuchPort: (path: string) =>
    `"${path}" is not among the ports that were found. Look at the list and choose again.`,
} as const;
