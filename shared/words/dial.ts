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
  setTo: (mark: string) => `Set the dial to ${mark}.`,
  gives: (mean: string, hottest: string) => `The plate is then ${mean} on average, ${hottest} at most.`,
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

/** The figures by the names of the electric-iron measuring standards; the definitions are this project's own. */
export const dialFigureWords = {
  named: 'Named as in IEC 60311 and GOST 307.2; the definitions are our own.',
  cycles: (count: number) => (count === 1 ? 'over 1 whole cycle' : `over ${count} whole cycles`),
  heatingUp: 'Heating-up time',
  heatingUpMeans: 'From cold to the first peak.',
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

export const suspicionWords = {
  reversed:
    'The reading fell as heat came on. The two wires of this thermocouple are probably swapped: swap them back at the board.',
  type: (likely: string) =>
    `The readings fit this iron’s chart if the thermocouple is type ${likely}. See what is printed on it, and settle the type.`,
  odd: 'No household iron holds such a temperature. See whether thermocouple type and unit are settled right.',
} as const;
