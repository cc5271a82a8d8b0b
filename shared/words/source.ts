/** What the page says of ports, devices and their lines. */

export const choiceWords = {
  title: 'Choose what to watch',
  found: 'These ports were found. Nothing is opened before you choose.',
  none: 'No port was found. Plug the probe’s board in: it appears here by itself.',
  watch: 'Watch this one',
  simulate: 'Use the simulated iron',
  simulateMeans: 'To try the program without an iron. Everything it shows and keeps is labelled SIMULATED.',
} as const;

export const deviceWords = {
  title: 'Devices and their lines',
  none: 'No device is connected.',
  noneAction:
    'Plug the probe’s board in. If the program was started for another port, start it again with that one.',
  link: { connected: 'connected', starting: 'starting: boot text is skipped', lost: 'lost' },
  lost: 'Device lost',
  lostAction: 'Plug the cable back in. It is taken up again by itself, under a new path too.',
  noPlate: 'None of them tells a plate’s temperature yet.',
  toDevices: 'Its lines, and how they are read',
  accepted: 'Lines used',
  missed: 'Samples missed',
  rejected: 'Lines not used',
  rejectedNone: 'none',
  lastLine: 'Last line',
  lastRaw: 'last one',
  noLine: 'no line yet',
  checked: 'Its lines carry a checksum.',
  unchecked: 'Its lines carry no checksum: a damaged one can only be found out if its value is implausible.',
} as const;

/** Why lines were not used, by the cause's name on the wire. */
export const rejectWords: Readonly<Record<string, string>> = {
  'too-long': 'too long',
  unfinished: 'broken off',
  checksum: 'checksum does not match',
  'not-ascii': 'holds bytes that are not text',
  malformed: 'not in a form that is known',
  'bad-value': 'a value can’t be right',
  incomplete: 'lacks what a reading needs',
};
