import type { CementKind } from '../cure/cement.ts';

/** What the page says where cements are looked at and entered. Temperatures come as text, in the unit that is shown. */

export const cementKindWords: Readonly<Record<CementKind, string>> = {
  'water-borne': 'water-borne',
  'solvent-borne': 'solvent-borne',
  'two-part': 'two-part',
  'moisture-curing': 'moisture-curing',
};

export const cementKindMeans: Readonly<Record<CementKind, string>> = {
  'water-borne': 'Dries as its water leaves: by the air’s temperature and humidity.',
  'solvent-borne': 'Dries as its solvent leaves: by the air’s temperature. Its vapour burns.',
  'two-part': 'Two parts are mixed and react: by the air’s temperature.',
  'moisture-curing': 'Reacts with the air’s moisture: by temperature and humidity.',
};

/** Units in which drying times are told and typed. */
export const dryingUnits = ['min', 'h', 'd'] as const;
export type DryingUnit = (typeof dryingUnits)[number];

/** What stands behind a number of them. */
export const dryingUnitSigns: Readonly<Record<DryingUnit, string>> = { min: 'min', h: 'h', d: 'days' };

export const dryingUnitWords: Readonly<Record<DryingUnit, string>> = {
  min: 'minutes',
  h: 'hours',
  d: 'days',
};

export const cementWords = {
  none: 'No cement yet',
  noneMeans:
    'Enter each cement that you work with: what its instructions say of its drying, and at what temperature and humidity. Its clock goes by that.',
  notRead: (why: string) => `The cements could not be read. ${why}`,
  reading: 'Reading the cements …',
  instructionsDecide:
    'A cement’s own instructions and your process’s approved manual decide. What stands here is only as good as what was entered.',
  add: 'New cement',
  change: 'Change it',
  changeOf: (cement: string) => `Change it: ${cement}`,
  look: 'Look at it',
  lookAt: (cement: string) => `Look at it: ${cement}`,
  back: 'Back to the cements',
  newTitle: 'New cement',
  unnamed: 'Cement without a name',
  noSuch: 'There is no cement at this address.',
  notSaved: 'Being changed here: not saved yet.',
  begun: (cement: string) => `${cement}: not saved yet`,
  copy: 'New cement from this one',
  copyMeans: 'With its values, but without batch and document: those are for its own can.',
  copyName: (name: string) => `${name} (another)`,
  archive: 'Put it away',
  archiveOf: (cement: string) => `Put it away: ${cement}`,
  unarchive: 'Take it out again',
  unarchiveOf: (cement: string) => `Take it out again: ${cement}`,
  archived: (count: number) => (count === 1 ? '1 cement put away' : `${count} cements put away`),
  isAway: 'Put away: not offered for new coats. Coats that dry keep it.',
  unconfirmedTitle: 'Unconfirmed',
  unconfirmed:
    'Nobody has entered yet where these values come from. Take them from the cement’s own instructions, and enter document and page.',
  unconfirmedShort: 'Unconfirmed: nobody has entered where its values come from.',
  willConfirm: 'Document and page stand here: saving confirms these values.',
  confirmed: (manual: string, page: string) => `From “${manual}”, page ${page}.`,
  version: (version: number, madeAt: string) => `Version ${version}, made ${madeAt}.`,
  saved: (version: number) => `Saved as version ${version}. Coats put on from now on go by it.`,
  whole: 'the cement',
} as const;

/** What is told of a cement in its list. */
export const cementFactWords = {
  kind: 'Kind',
  at: 'Times hold at',
  conditions: (temperature: string, humidity: string) => `${temperature} and ${humidity} humidity`,
  air: 'Air',
  airElse: 'Air, else',
  between: (low: string, high: string) => `${low} to ${high}`,
  atLeast: (low: string) => `at least ${low}`,
  atMost: (high: string) => `at most ${high}`,
  humidity: (range: string) => `humidity ${range}`,
  byInstructions: (limits: string) => `${limits}, by its instructions`,
  byPractice: (limits: string) => `${limits}, by general coating practice, since its instructions don’t say`,
  limit: 'Cement limit',
  limitNone: 'not told',
  burns: 'its vapour burns',
  burnsNot: 'its vapour doesn’t burn',
  burnsNotEntered: 'its vapour doesn’t burn, by what was entered',
  batch: 'Batch',
  expires: 'Use by',
  expired: (day: string) =>
    `Past its day, which was ${day}: see its instructions before it goes on anything.`,
  written: 'Written in',
  standing: 'Values from',
  document: (manual: string, page: string) => `“${manual}”, page ${page}`,
  time: (from: string, unit: DryingUnit) =>
    unit === 'd' && from === '1' ? '1 day' : `${from} ${dryingUnitSigns[unit]}`,
  range: (from: string, to: string, unit: DryingUnit) => `${from} to ${to} ${dryingUnitSigns[unit]}`,
} as const;

export const learnedWords = {
  none: 'Nothing learned here yet: its clock goes by the instructions’ time.',
  dries: (factor: string, seen: string) => `Dries here in ${factor} of the instructions’ time (${seen}).`,
  between: (low: string, high: string) => `Four times in five it lies between ${low} and ${high}.`,
  driesAlike: (seen: string) => `Dries here in the time of the instructions (${seen}).`,
  betweenAlike: (low: string, high: string) =>
    `Four times in five it takes between ${low} and ${high} of that.`,
  observations: (count: number) => (count === 1 ? '1 observation' : `${count} observations`),
  anew: 'Learn anew',
  anewOf: (cement: string) => `Learn anew: ${cement}`,
  anewMeans:
    'What “dry now” and “still tacky” have taught of it no longer counts, and its clock goes by the instructions’ time again. Meant for another batch, or a change of how thick you put it on. It can’t be taken back.',
  really: 'Yes, forget what was learned',
  keep: 'Keep it',
  done: 'Learned anew from here: the instructions’ time holds.',
  failed: (why: string) => `Nothing was changed. ${why}`,
} as const;

/** The fields of the form, and what is wrong in them. */
export const cementFormWords = {
  name: 'Name',
  nameMeans: 'As you call it at the bench.',
  kind: 'By what it dries',
  kindMissing: 'Choose by what it dries: its instructions say so.',
  times: 'Drying times, as the instructions give them',
  timesMeans:
    'One time, or from one to another. Leave a stage empty where the instructions don’t give it; one at least is needed.',
  from: 'From',
  to: 'to',
  toMeans: 'Empty: one time only.',
  timeUnit: 'Counted in',
  of: (field: string, stage: string) => `${field}, ${stage}`,
  conditions: 'Air at which these times hold',
  conditionsMeans: 'Instructions usually say it beside the times, often 73 °F (23 °C) and 50 %.',
  at: 'Temperature',
  atRh: 'Relative humidity',
  limits: 'What the air may be',
  limitsMeans: (low: string, high: string, humidity: string, margin: string) =>
    `As its instructions say. Left empty, general coating practice stands in: ${low} to ${high} and at most ${humidity} humidity. At least ${margin} over the dew point is practice for all.`,
  low: 'Lowest temperature',
  high: 'Highest temperature',
  lowRh: 'Lowest humidity',
  highRh: 'Highest humidity',
  practice: (limit: string) => `Empty: ${limit}, general coating practice.`,
  noLowRh: 'Empty: none; practice knows no lowest.',
  cementLimit: 'Cement limit',
  cementLimitMeans: 'The highest plate temperature over it, by its instructions. Empty: not told.',
  burns: 'Does its vapour burn?',
  burnsMeans: 'Stands on the can, often as a sign with a flame. If it isn’t clear, say that it does.',
  burnsYes: 'Yes, it burns',
  burnsNo: 'No',
  burnsMissing: 'Say whether its vapour burns.',
  more: 'More: how strongly its drying goes by temperature',
  energy: {
    'solvent-borne': 'Heat of vaporisation of its slowest solvent',
    'two-part': 'Activation energy of its reaction',
    'moisture-curing': 'Activation energy of its reaction',
  },
  energyName: 'Energy',
  energySign: 'kJ/mol',
  energyMeans:
    'The larger, the more a warm or cold day changes its time. Hardly any instructions give it. Empty: as usual for its kind.',
  can: 'The can',
  batch: 'Batch',
  expires: 'Use by',
  expiresMeans:
    'Year, month, day, for example 2027-03-31. Where only a month stands, its last day. Empty: not told.',
  expiresWrong: 'Write the day as year, month, day, for example 2027-03-31.',
  source: 'Name, and where it is written',
  manual: 'Document',
  manualMeans: 'Its instructions, data sheet, or your process’s manual.',
  page: 'Page',
  manualMissing: 'Enter the document too: a page alone says nothing.',
  pageMissing: 'Enter the page too, so that others find it.',
  standing: 'What the values rest on',
  archived: 'Put away',
  yes: 'yes',
  no: 'no',
  percent: (text: string) => `${text} %`,
  time: (text: string) => `Write a time such as 30 or 1,5; at most ${text}.`,
  fromMissing: 'Write the shorter time here, or one time alone.',
  toShorter: 'The second time must not be shorter than the first.',
  early: (stage: string, time: string) =>
    `It comes after “${stage}”, which takes ${time}: neither time may be shorter than that.`,
  noTimes: 'Give at least one stage’s time.',
  lowOverHigh: (high: string) => `The lowest must be under the highest, which is ${high}.`,
  saturated: (most: number) => `In saturated air nothing dries: write a number from 0 to ${most} %.`,
  dryAir: (least: number) => `Without moisture it doesn’t cure: write a number from ${least} to 100 %.`,
} as const;
