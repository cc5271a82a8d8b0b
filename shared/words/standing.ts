import type { IronPhase } from '../iron/phase.ts';
import type { Place } from '../iron/place.ts';

/** What the page says of an iron: its plate, where that stands, and what is worked. */

export const standingWords = {
  cold: 'cold',
  below: 'below every stage',
  'in-stage': (stages: string) => `in ${stages}`,
  between: 'between stages',
  above: 'above every stage',
  'over-limit': 'over the fabric limit',
  'no-reading': 'no reading',
} as const;

export const trendWords = { steady: 'steady', rising: 'rising', falling: 'falling' } as const;

export const phaseWords: Readonly<Record<IronPhase, string>> = {
  unknown: '',
  cold: '',
  warming: 'warming up',
  regulating: 'held by its thermostat',
  cooling: 'losing heat',
};

export const placeWords: Readonly<Record<Place, string>> = {
  unknown: 'place not said',
  'on-work': 'on the work',
  'off-work': 'off the work',
  'on-rest': 'on its rest',
};

export const ironWords = {
  plate: 'Plate temperature',
  is: (iron: string) => `${iron} is `,
  allowance: (guard: string) => `±${guard} allowance, not measured`,
  measured: (guard: string) => `±${guard}, measured`,
  noReading: 'no reading',
  neverRead: 'No valid reading yet.',
  lastRead: (ago: string) => `Last valid reading ${ago} ago.`,
  hottestOf: (count: number) => `hottest of ${count} probes`,
  working: (stage: string) => `Working: ${stage}`,
  noStage: 'no stage',
  noStageChosen: 'No stage chosen',
  others: 'Other probes and irons',
  workWith: (iron: string) => `Work with ${iron}`,
  chooseStage: 'Stage being worked',
  choosePlace: 'Where the iron is',
  nothingWatched: 'Nothing is being watched',
  nothingWatchedMeans: 'No iron has been set up, so there is no plate temperature to show.',
} as const;

export const ladderWords = {
  title: 'Stages and limits',
  plate: 'plate',
  range: (low: string, high: string) => `${low} to ${high}`,
  fabricLimit: 'fabric limit',
  allowance: (from: string) => `warned from ${from}`,
  workingStage: 'being worked',
  cementLimit: 'cement limit',
  cementUnset: 'cement limit not set',
  unplaced: 'plate: no reading',
} as const;

export const alarmPanelWords = {
  title: 'Alarms',
  panel: 'What is to be seen first',
  priority: { 3: 'Act now', 2: 'Act soon', 1: 'Know' },
  count: (of: number) => `1 of ${of} alarms`,
  acknowledge: 'Acknowledge',
  silence: 'Silence 60 s',
  otherwise: 'Otherwise:',
  whatOtherwise: 'What happens otherwise',
  peak: (peak: string) => `Highest so far ${peak}.`,
  peakWas: (peak: string) => `Highest ${peak}.`,
  since: (time: string, ago: string) => `since ${time} (${ago})`,
  raised: (time: string) => `raised at ${time}.`,
  standing: 'standing',
  seen: 'standing, seen',
  goneTitle: 'Gone, not yet seen',
  acknowledgeAll: 'Acknowledge all',
  overtaken: 'It has passed the limit since: do what is said there.',
  silencedUntil: (time: string) => `silenced until ${time}`,
} as const;
