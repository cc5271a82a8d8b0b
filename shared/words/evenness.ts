import type { SpotObjection, SpotPlace } from '../iron/spots.ts';

/** What is said of how evenly a plate is hot. Temperatures and differences come as text, in the unit that is shown. */

export const placeWords: Readonly<Record<SpotPlace, string>> = {
  probe: 'beside the probe',
  toe: 'toe',
  heel: 'heel',
  left: 'left edge',
  right: 'right edge',
  middle: 'middle',
};

const objections: Readonly<Record<SpotObjection, string>> = {
  'no-reading':
    'The probe gives no steady stream of readings now, and each spot is held against what it reads. See to the probe first.',
  cold: 'The plate is not at working heat by its probe. Let the iron come up and cycle first.',
  moving:
    'The plate is rising or falling too fast to be read by hand. Wait until it turns, read that place again, and type it at once.',
  'far-off':
    'That is more than 60 °C (108 °F) from what the probe reads now. See whether it was typed in the right unit, and read that place again.',
};

export const evennessWords = {
  title: 'Evenness of the plate',
  objections,
  notTyped: 'Nothing was typed for that place. Name one that was.',
  /** On the Iron page and in Setup. */
  spread: (hottest: string, by: string, coldest: string) => `${hottest} ${by} hotter than ${coldest}`,
  the: (place: string) => (place === placeWords.probe ? 'the probe’s place' : `the ${place}`),
  even: (offBy: string) => `no hotter spot to be told, within ±${offBy}`,
  offBy: (offBy: string) => `(±${offBy})`,
  byProbes: 'Over whole cycles:',
  byTyped: 'By typed spots:',
  limitsCount: (over: string) => `Limits count ${over} on top for the hottest spot.`,
  means:
    'Limits hold for the hottest spot. Iron on its rest, hot and cycling. Press a hand thermometer on one place until it stands still, type what it shows at once, and go on to the next. Begin beside the probe: the other places are held against that, and the iron’s swing is taken out by what the probe reads meanwhile.',
  named:
    'Irons are measured for the evenness of temperature over the soleplate, and for its hottest point (IEC 60311, GOST 307.2): the names are theirs, the definitions our own.',
  caution: 'A hot plate burns: touch it with the thermometer only.',
  typedTitle: 'Type spot readings, one place after the other',
  place: 'Place on the plate',
  reading: 'What it shows',
  readingOf: (place: string) => `What it shows, ${place}`,
  thermometer: 'Thermometer may be off by ±',
  thermometerMeans:
    'Stands in its data sheet; ±2 to ±3 °C (4 to 5 °F) is common (common practice, no source).',
  keep: 'Keep this reading',
  kept: (place: string) => `Kept: ${place}.`,
  keptNext: (place: string, next: string) => `Kept: ${place}. Next: ${next}.`,
  wrongReading: (sign: string) => `Write a plate temperature in ${sign}, for example 250 or 250,5.`,
  wrongThermometer: (most: string) => `Write how far the thermometer may be off, over 0 and up to ${most}.`,
  spot: (read: string, probe: string) => `${read}, probe read ${probe}`,
  over: (k: string) => `${k} over the probe’s place`,
  under: (k: string) => `${k} under the probe’s place`,
  same: 'as hot as the probe’s place',
  base: 'the others are held against this',
  waits: 'not counted: type the reading beside the probe, by the same probe and calibration',
  takeOut: 'Take out',
  takeOutOf: (place: string) => `Take out: ${place}`,
  takenOut: (place: string) => `Taken out: ${place}.`,
  forget: 'Forget all of it',
  reallyForget: 'Yes, forget all readings',
  keepThem: 'Keep them',
  forgotten: 'Forgotten. Limits hold for the probe’s place alone.',
  unknown: 'Not looked at yet: limits hold for the place of the probe alone.',
  counted: (limits: string, advice: string) =>
    `Counted in: ${limits} for the limits, ${advice} for where to set the dial.`,
} as const;
