/** What the page says of its sound, of who could hear it, and of the screen. It never says that a sound was heard. */

export const soundWords = {
  title: 'Sound and screen',
  off: 'Sound off',
  turnOn: 'Turn sound on',
  turnOff: 'Turn sound off',
  on: 'Sound on',
  stopped: 'Sound stopped',
  resume: 'Tap to go on',
  missing: 'No sound here',
  name: 'Sound of this page',

  state: {
    off: 'Sound is off: alarms are silent on this page until you turn it on.',
    stopped: 'This browser has stopped the sound: alarms are silent here. Any tap or key lets it go on.',
    on: 'Alarms sound on this page, as loud as this device is set. The page can’t know whether you hear them: try it from where you work.',
    missing: 'This browser plays no sound for pages: alarms are silent here. Use another browser or device.',
  },
  pages: (count: number) =>
    count === 1
      ? 'Sound is on in one page.'
      : `Sound is on in ${count === 0 ? 'no page' : `${count} pages`}.`,
  notKept: 'This browser keeps nothing: these choices are forgotten when the page closes.',

  unheardTitle: 'No page would sound an alarm.',
  unheard: 'A plate is hot or may be, and sound is off on every page.',

  volume: 'Loudness',
  volumes: { low: 'quiet', middle: 'middle', full: 'full' },
  tick: 'Tick in stage',
  tickOn: 'on',
  tickOff: 'off',
  tickMeans:
    'A quiet tick while the plate is in the chosen stage, or in any where none is chosen, so that the eyes can stay on the cloth. It stops when the plate leaves its stage, or the reading fails.',
  test: 'Try the sounds',
  tests: { 'act-now': 'Act now', 'act-soon': 'Act soon', know: 'Know', ready: 'May be ready' },
  testWaits: 'An alarm is sounding: that comes first.',

  lost: 'This page sounds because it can’t reach the daemon, and a plate was hot or an alarm stood.',
  quiet: 'Quiet until the daemon is back',
} as const;

export const screenWords = {
  awake: 'This screen is kept awake.',
  maySleep: 'This screen may sleep.',
  why: {
    refused: 'This browser refused to keep it awake, perhaps to save power.',
    missing: 'This browser can’t keep it awake here.',
    released: 'The browser let go of it; it is asked again when this page is shown or touched.',
  },
  instead: 'Set the device itself to stay on. A screen that sleeps may stop the sound too.',
} as const;

/** What a window's title begins with while an alarm stands and the window is out of sight. */
export const titleWords = { 3: 'ACT NOW', 2: 'ACT SOON', 1: 'KNOW' } as const;
