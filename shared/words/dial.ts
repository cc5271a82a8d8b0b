import type { Ceiling } from '../iron/dial/advice.ts';

/** What the page says of an iron's dial: what was measured at its marks, where to set it, and what looks wrong. */

export const ceilingWords: Readonly<Record<Ceiling, string>> = {
  'stage-high': 'the stage’s highest temperature',
  'fabric-limit': 'the fabric limit',
  'cement-limit': 'the cement limit',
};

/** A mark as it can be set, to a tenth and never above what was worked out: a hotter one could pass a limit. */
export const markFigure = (mark: number): string => String(Math.floor(mark * 10 + 1e-9) / 10);

/** Temperatures and marks come as text, in the unit that is shown. */
export const dialWords = {
  title: 'Dial',
  setTo: (mark: string, stage: string) => `Set the dial to about ${mark} for ${stage}:`,
  gives: (mean: string, hottest: string) => `mean ${mean}, peaks to ${hottest}.`,
  overCement: (limit: string) =>
    `Its peaks pass the cement limit of ${limit}: keep off bonded edges and tapes.`,
  interpolated: 'Between marks that were measured: worked out, not measured.',
  typed: 'Rests on readings from a hand thermometer.',
  heldBy: (what: string, target: string) =>
    `Not as hot as the target of ${target}: its peaks would pass ${what}.`,
  endOfChart: (target: string) => `As near to the target of ${target} as the measured marks come.`,
  highest: (mark: string) => `Highest mark whose peaks keep under the limits: ${mark}.`,
  highestMeasured: (mark: string) =>
    `Every measured mark keeps under the limits; above ${mark} nothing is known.`,
  noneUnderLimit: 'At no measured mark do the peaks keep under the limits.',
  settle: 'Coming up, the first peak goes higher: let the iron cycle on its rest first.',
  tooWide: (by: string, what: string) =>
    `This iron can’t do this stage: it swings ${by} too wide to stay hot enough and keep its peaks under ${what}.`,
  tooCold: (mark: string, mean: string) =>
    `Measured marks are too cold: the best, ${mark}, gives ${mean}. Let the iron cycle on its rest at a higher mark.`,
  tooHot: (mark: string, hottest: string) =>
    `Measured marks are too hot: the lowest, ${mark}, reaches ${hottest}. Let the iron cycle on its rest at a lower mark.`,
  fewMarks: (charted: number) =>
    charted === 0
      ? 'No mark has been measured yet. Say what the dial stands at and let the iron cycle on its rest.'
      : 'One mark has been measured, and it doesn’t fit. Measure another: say it, and let the iron cycle on its rest.',
  falls: (lower: string, higher: string, by: string) =>
    `The dial chart falls: mark ${higher} measured ${by} colder than mark ${lower}. One of them was told wrong: measure it again.`,
  doubted: (mark: string) =>
    `The plate does something else than at ${mark}. If the dial was turned, say what it stands at now; if not, say ${mark} again.`,
} as const;

/** Where the user says what the dial stands at. */
export const dialToldWords = {
  title: 'What the dial stands at',
  mark: (mark: string) => `Dial ${mark}`,
  notSaid: 'not said',
  other: 'Dial at another mark',
  say: 'Say it',
  count: 'A dial with words or dots: count them from the coldest, 1, 2, 3.',
  wrong: 'Write a number from 0 to 1000 as it stands on the dial, for example 3 or 4,5.',
} as const;

/** The dial of an iron in Setup. */
export const dialSetupWords = {
  title: 'Dial chart',
  none: 'Nothing is charted yet. Say on the Iron page what the dial stands at, and let the iron cycle on its rest: after three to four cycles the mark is charted by itself. Or type readings of a hand thermometer below.',
  mark: (mark: string) => `Mark ${mark}`,
  mean: (mean: string) => `${mean} on average`,
  range: (trough: string, peak: string) => `${trough} to ${peak}`,
  noRange: 'highest and lowest not known',
  measured: 'measured by a probe',
  typed: 'typed from a hand thermometer',
  takeOut: 'Take out',
  takeOutOf: (mark: string) => `Take out mark ${mark}`,
  reallyTakeOut: (mark: string) => `Yes, take mark ${mark} out`,
  keepIt: 'Keep it',
  takenOut: (mark: string) => `Mark ${mark} was taken out. It is kept among the earlier points.`,
  advice: 'Where to set it',
  uncertainty: (k: string) => `Counted in: ±${k} for the probe, its lag, and how peaks scatter;`,
  unevenness: (k: string) => `${k} for the hottest spot of the plate.`,
  unevennessNone: 'nothing for how unevenly the plate is hot, as no hotter spot is known.',
  figures: (mark: string, day: string) => `Figures of the last stretch on the rest, at mark ${mark}, ${day}`,
  warmUp: (mark: string, day: string) => `Coming up from cold, at mark ${mark}, ${day}`,
  load: (mark: string, day: string) => `On the work, at mark ${mark}, ${day}`,
  means: 'What these mean',
  typedTitle: 'Type a reading of a hand thermometer',
  typedMark: 'Mark on the dial',
  typedMean: 'Reading',
  typedPeak: 'Highest, if seen',
  typedTrough: 'Lowest, if seen',
  typedMeans: 'Iron on its rest, in the middle of the plate, over some cycles. Advice needs the highest.',
  add: 'Add to the chart',
  added: (mark: string) => `Mark ${mark} is in the chart, as typed.`,
  typedWrong: (sign: string) => `Write a plate temperature in ${sign}, for example 250 or 250,5.`,
  typedOrder: 'Lowest, reading and highest must rise in that order.',
  accept: 'Accept the new figures as the chart',
  acceptMeans: 'Marks that were not measured since are taken out: they are no longer true.',
  accepted: 'The new figures are the chart now.',
} as const;

/** Drawings of an iron's dial chart and of its cycles; each is told in words too. */
export const dialDrawingWords = {
  chart: 'Dial chart, drawn',
  marks: 'mark on the dial',
  mean: 'mean',
  hottest: 'hottest to be expected: peaks with all that is counted in',
  limit: (limit: string) => `fabric limit ${limit}`,
  limitFar: (limit: string) => `fabric limit ${limit}: further up than is drawn`,
  point: (mark: string, mean: string, offBy: string) => `mark ${mark}: ${mean} ±${offBy}`,
  dots: (offBy: string) => `Dots are measured or typed means, ±${offBy}.`,
  chartSays: (points: string, limit: string) => `Mean at each mark. ${points}. Fabric limit ${limit}.`,
  cycles: (mark: string, day: string) => `Cycles on the rest at mark ${mark}, ${day}`,
  seconds: 'seconds',
  turns: 'highest and lowest of each cycle, joined',
  meanIs: (mean: string) => `mean ${mean}`,
  stageHigh: (stage: string, high: string) => `highest for ${stage}: ${high}`,
  cyclesSay: (said: {
    readonly mark: string;
    readonly count: number;
    readonly mean: string;
    readonly low: string;
    readonly high: string;
  }) =>
    `${said.count === 1 ? 'One cycle' : `${said.count} cycles`} at mark ${said.mark}: mean ${said.mean}, from ${said.low} to ${said.high}.`,
  show: 'Show the cycles at each mark',
} as const;

/** The figures by the names of the electric-iron measuring standards; the definitions are this project's own. */
export const dialFigureWords = {
  named: 'Named as in IEC 60311 and GOST 307.2; the definitions are our own.',
  cycles: (count: number) => (count === 1 ? 'over 1 whole cycle' : `over ${count} whole cycles`),
  heatingUp: 'Heating-up time',
  heatingUpMeans: 'From cold to the first peak.',
  from: (time: string, from: string) => `${time} from ${from}`,
  excess: 'Heating-up excess',
  excessMeans: 'First peak over the later mean.',
  mean: 'Soleplate temperature',
  meanMeans: 'Mean over whole cycles.',
  fluctuation: 'Cyclic fluctuation',
  fluctuationMeans: 'From peak to trough, mean over the cycles.',
  period: 'Cycle',
  duty: 'Share of time rising',
  dutyMeans: 'As far as the plate tells: it goes on rising for a while after the heater is off.',
  highestPeak: 'Highest peak',
  load: 'Drop under load',
  loadMeans: 'Mean on the work under mean on the rest, at the same mark.',
  loadTrough: 'Lowest under load',
  loadTroughMeans: 'Lowest on the work under the mean trough on the rest.',
  spread: (spread: string) => `scatters by ±${spread} (one standard deviation)`,
} as const;

export const driftWords = {
  hotter: (by: string, since: string) => `Runs ${by} hotter than its dial chart since ${since}.`,
  colder: (by: string, since: string) => `Runs ${by} colder than its dial chart since ${since}.`,
  rests: (stretches: number, sigma: string) =>
    `Seen in ${stretches} stretches on the rest; one stretch is taken to scatter by ${sigma}.`,
  action:
    'See whether the dial stands where you said, and whether the probe sits as it did. If both do, measure the marks again.',
} as const;
