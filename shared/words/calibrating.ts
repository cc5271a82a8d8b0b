/** What is said while a calibration is being made, and of those that were. */

export const procedureRefusals = {
  none: 'No calibration of this probe is being made. Begin one first.',
  already:
    'A calibration of this probe is being made already, here or on another page. Go on with it, or give it up first.',
  notWaiting: 'There is no point to keep. Choose a point and wait until the reading holds.',
  otherKind: (waiting: string, given: string) =>
    `It waits at “${waiting}”, but what was sent belongs to “${given}”. Choose the point anew.`,
  noPoint: (place: number) => `There is no point ${place + 1}.`,
  changed:
    'How this probe is read, or the iron that it sits on, has changed since the first point: the points no longer go together. Give this procedure up and begin anew.',
  duePast: 'This due date has passed already. Enter a later day, or leave it empty.',
} as const;
