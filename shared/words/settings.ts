/** What is said of the settings, in sentences. */
export const settingsWords = {
  unreadable: (path: string, why: string) => `The settings in ${path} can't be read: ${why}`,
  notJson: (path: string, why: string) =>
    `The settings in ${path} are not JSON (${why}). Mend the file, or move it away to begin with the shipped settings. Nothing was started, so that your limits are not lost unseen.`,
  badField: (path: string, field: string, why: string) =>
    `The settings in ${path} are wrong at "${field}": ${why}. Mend that field, or move the file away to begin with the shipped settings. Nothing was started, so that your limits are not lost unseen.`,
  noSchedule: (id: string) => `There is no heat schedule "${id}".`,
  scheduleChanged: (id: string, newest: number, seen: number) =>
    `The heat schedule "${id}" has been changed in the meantime: its newest version is ${newest}, yours was made from ${seen}. Look at the newest one and make your change again.`,
  noProbe: (id: string) =>
    `There is no probe "${id}". A probe appears here once a device has sent a line of it.`,
  probeTwice: (id: string) => `The probe "${id}" is named twice: it sits on one iron, once.`,
  mixedProbes:
    'Simulated probes and real ones are kept apart: an iron has the one kind or the other, and keeps to it. Name probes of its own kind.',
  noIron: (id: string) => `There is no iron "${id}".`,
  sitsNowhere:
    'This probe sits on no iron yet. It gets one of its own with its next line; say then where it is.',
  hasProbes: (iron: string) =>
    `"${iron}" has a probe, so its plate is watched. Move its probe to another iron, and it goes by itself.`,
  markMeasured: (mark: number) =>
    `Mark ${mark} has been measured by a probe, which says more than one reading. Take that point out first if it is wrong.`,
  markNotCharted: (mark: number) => `The dial chart has no mark ${mark}. Name one that it has.`,
  notDrifted: 'This iron keeps to its dial chart: there is nothing to accept.',
  typedOrder: 'Lowest, reading and highest must rise in that order.',
  notWritten: (why: string) => `The settings could not be written, so nothing was changed: ${why}`,
  newProbe: (name: string) => `probe ${name}`,
  newIron: (n: number) => `Iron ${n}`,
  simulatedIron: 'Simulated iron',
} as const;
