import type { Fixing, PlateSpot, Seat, WatchedHow } from '../thermometer/place.ts';
import type { Uncounted } from '../watch/counted.ts';

/** What is said of irons that are not watched all the time: checks on a pad, typed readings, and where probes are. */

/** What stands behind a temperature, for screens and records alike. */
export const watchedWords: Readonly<Record<WatchedHow, string>> = {
  monitored: 'monitored',
  checked: 'checked',
  typed: 'typed',
  'not-told': 'not counted',
};

/** In place of a plate temperature, where a probe reads something else. */
export const uncountedWords: Readonly<Record<Uncounted, string>> = {
  bare: 'Nothing on the check pad',
  loose: 'Probe loose',
  'not-told': 'Place not told, not counted',
};

export const watchedMeans: Readonly<Record<WatchedHow, string>> = {
  monitored: 'A probe on its plate is read all the time.',
  checked: 'It is read while it lies on its check pad. In between nothing here knows its plate.',
  typed: 'It has no probe: only what you type is known of it.',
  'not-told': 'Its probe was moved here, and nobody has said yet where it sits.',
};

/** Temperatures, differences and times come as text, in the unit that is shown. */
export const checkWords = {
  ago: (ago: string) => `checked ${ago} ago`,
  now: 'on its check pad now',
  settlingShort: 'settling on its check pad',
  settling: 'Settling on its check pad: leave it there until the reading stands.',
  settlingAt: (temperature: string) => `${temperature} so far, rising.`,
  none: 'not checked yet',
  noneMeans: 'Park the iron on its check pad and leave it there until the reading stands.',
  silent: 'The check pad gives no valid reading: see its board and its wires.',
  hottest: (low: string, high: string) => `Hottest of this check; it went from ${low} to ${high}.`,
  notLive: 'This is no live reading: the plate may be hotter now.',
  missedAgo: (atLeast: string, ago: string) =>
    `Lifted ${ago} ago before it settled: the plate was at least ${atLeast}. Park it longer.`,
  lostAgo: (atLeast: string, ago: string) =>
    `The pad stopped reading ${ago} ago before it settled: the plate was at least ${atLeast}.`,
  chart: (mark: string, mean: string) =>
    `By its dial chart, not measured: at ${mark} it runs at ${mean} on average`,
  chartPeaks: (peak: string) => `, with peaks of ${peak}`,
  noChart: 'What it does between checks is not known: its dial chart has nothing at what the dial stands at.',
  value: (hottest: string, guard: string) => `${hottest} ±${guard}`,
  settled: (value: string) => `Checked on its pad: ${value}, settled`,
  over: (value: string, low: string, ended: 'lifted' | 'lost') =>
    `Check ended (${ended === 'lifted' ? 'lifted off' : 'the pad stopped reading'}): hottest ${value}, lowest ${low}`,
  missed: (atLeast: string, ended: 'lifted' | 'lost') =>
    `No check: ${ended === 'lifted' ? 'lifted' : 'the pad stopped reading'} before it settled; the plate was at least ${atLeast}`,
} as const;

export const typedWords = {
  ago: (ago: string) => `typed ${ago} ago`,
  none: 'nothing typed yet',
  noneMeans: 'Read its plate with a hand thermometer, and type what it says.',
  title: 'Type what a hand thermometer reads',
  field: 'Plate by hand thermometer',
  add: 'Keep this reading',
  wrong: (unit: string) => `Write a plate temperature in ${unit}, for example 250.`,
  kept: (temperature: string) => `${temperature} is kept, marked as typed.`,
  over: (temperature: string, limit: string) =>
    `${temperature} is over the fabric limit of ${limit}, counting what a hand thermometer may be off. Set the iron on its rest, turn the dial down, and examine the area as the manual says.`,
  command: (iron: string, temperature: string) => `typed reading ${temperature} (${iron})`,
  found: (temperature: string, guard: string, over: boolean) =>
    `Typed from a hand thermometer: ${temperature} ±${guard}${over ? ', over the fabric limit' : ''}`,
  alarm: 'By a reading typed from a hand thermometer.',
} as const;

export const spotWords: Readonly<Record<PlateSpot, string>> = {
  middle: 'the middle of the plate',
  tip: 'near its tip',
  heel: 'near its heel',
  edge: 'at an edge',
};

export const fixingWords: Readonly<Record<Fixing, string>> = {
  clamped: 'Clamped or screwed down',
  sprung: 'Pressed on by a spring',
  fixed: 'Cemented or peened in',
};

export const seatWords: Readonly<Record<Seat, string>> = {
  fitted: 'on the plate',
  'check-pad': 'in the check pad',
  loose: 'loose, on no iron',
  'not-told': 'place not told',
};

export const placeWords = {
  title: 'Where it sits',
  ask: (label: string, iron: string) => `Where is ${label} now, on ${iron}?`,
  why: 'It was moved, and its readings don’t count until you say. Limits are watched with them all the same.',
  askHow: (spot: string) => `How does it sit, ${spot}?`,
  spot: {
    middle: 'Middle of the plate',
    tip: 'Near the tip',
    heel: 'Near the heel',
    edge: 'At an edge',
  },
  pad: 'In its check pad',
  loose: 'Loose, on no iron',
  back: 'Back',
  change: 'Say it anew',
  assumed: 'On the plate, as far as anybody said.',
  fitted: (spot: string, fixing: string) => `On the plate: ${spot}, ${fixing}.`,
  inPad: 'In its check pad: the iron is checked whenever it is parked there.',
  isLoose: 'Loose: its readings count for no plate.',
  told: (label: string, place: string) => `${label}: ${place}`,
  notCounted: 'Place not told',
  apart: {
    'check-pad': 'What the check pad reads: of a plate only while one lies on it.',
    loose: 'Loose: counts for no plate.',
    'not-told': 'Not counted until its place is told.',
  },
  reads: (temperature: string) => `The probe reads ${temperature}, not counted.`,
  note: (label: string, iron: string) =>
    `${label} was moved to ${iron}: say where it sits, its readings don’t count until then.`,
  toPlace: 'Say where it sits',
} as const;

export const handIronWords = {
  add: 'Add an iron without a probe',
  addMeans: 'For an iron that is read with a hand thermometer only.',
  newName: 'Iron read by hand',
  added: (name: string) => `${name} is there now. Readings are typed on its page.`,
  none: 'No probe: read by hand thermometer.',
  remove: 'Take this iron away',
  removed: (name: string) => `${name} is gone. Its records stay.`,
} as const;
