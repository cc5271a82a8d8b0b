import { pieceWords } from './pieces.ts';

/** What the page says around the irons: its link to the daemon, notes, recording, commands, keys. */

export const pageWords = {
  name: 'soleplate',
  skip: 'Go to the plate temperature',
  simulated: 'SIMULATED',
  simulatedMeans: 'No real iron is being watched.',
  unit: 'Unit',
  fahrenheit: 'Fahrenheit',
  celsius: 'Celsius',
  notes: 'Notes',
  dismiss: 'Understood',
} as const;

export const linkWords = {
  live: 'Live',
  connecting: 'Looking for the daemon …',
  neverReached: 'The daemon can’t be reached. Trying again …',
  lost: (since: string, ago: string) => `The daemon can’t be reached since ${since} (${ago}).`,
  lostName: 'Daemon lost',
  lostMeans: 'No number here is live. Nothing on this page can warn you now. Treat every plate as hot.',
  lostAction:
    'Lift the iron off the work and set it on its rest. See whether the program still runs. This page tries again by itself.',
  unsent: (count: number) =>
    `Pressed since then and not sent yet: ${count}. It stands at the end of this page.`,
  lastHeard: 'As last heard, before the daemon was lost.',
  garbled: 'The daemon sent something that this page can’t read, so it was not used. Reload the page.',
} as const;

export const noteWords = {
  viewOnly:
    'View only: this page may look, but it can’t command. Open it on the daemon’s own machine for that.',
  notKept: (why: string) => `NOT KEPT: what happens now is not being written down. ${why}`.trim(),
  unconfirmed: (schedule: string) =>
    `Unconfirmed limits (“${schedule}”): no manual and page stand behind them yet.`,
  toSource: 'Enter manual and page',
  olderPage: (own: string, program: string) =>
    `This page is of version ${own}, the program of version ${program}. Reload the page.`,
  reload: 'Reload',
  storageRefused: 'This browser keeps nothing: the unit and unsent marks are forgotten when the page closes.',
} as const;

export const recordingWords = {
  name: 'Recording',
  since: (time: string) => `Recording since ${time}`,
  running: 'Recording',
  none: 'Not recording',
  starts: 'Recording starts by itself once the plate gets hot.',
  start: 'Start recording',
  stop: 'Stop recording',
  needed: 'Stage and place are kept in a recording: start one first.',
} as const;

export const commandWords = {
  start: (iron: string) => `start recording (${iron})`,
  stop: (iron: string) => `stop recording (${iron})`,
  stage: (iron: string, stage: string) => `stage ${stage} (${iron})`,
  noStage: (iron: string) => `no stage (${iron})`,
  place: (iron: string, place: string) => `${place} (${iron})`,
  dial: (iron: string, mark: string) => `dial ${mark} (${iron})`,
  note: (iron: string) => `note (${iron})`,
  acknowledge: (title: string, iron: string) => `acknowledge “${title}” (${iron})`,
  silence: (title: string, iron: string) => `silence “${title}” (${iron})`,
  watch: (path: string) => `watch ${path}`,
  simulate: 'use the simulated iron',

  sending: (what: string) => `Sending: ${what} …`,
  unsent: (what: string) =>
    `Not sent yet: ${what}. Keep this page open: it is sent once the daemon can be reached.`,
  discard: 'Don’t send',
  refused: (what: string, why: string) => `Refused: ${what}. ${why}`,
  notKept: (what: string) => `Done, but it could not be written to the book: ${what}.`,
  changedSince: (what: string) => `Not sent: ${what}. The alarm has changed since then: look at it again.`,
  tooLate: (what: string) => `Not sent: ${what}. It came too late to mean the same: ask again.`,
  tooLateFor: (what: string, why: string) => `Not sent, too late: ${what}. ${why}`,
  sentLate: (what: string, before: number, ago: string) =>
    `Sent ${ago} late: ${what}${before === 0 ? '' : `, and ${before} before it`}. It counts from now on, not from when you said it. What areas have had is put right on the Piece page, under “${pieceWords.visits}”.`,
  answerUnread: 'The daemon’s answer could not be read.',
} as const;

export const keyWords = {
  title: 'Keys',
  acknowledge: 'acknowledges the first alarm',
  silence: 'silences the first alarm for 60 s',
  tab: 'goes from target to target; Enter or Space presses it',
  on: 'Single keys are on',
  off: 'Single keys are off',
} as const;
