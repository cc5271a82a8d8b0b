import { AIR_HIGHEST_C, AIR_LOWEST_C, type AirPart } from '../cure/air.ts';
import type { AirAnswer, AirProbeAnswer } from '../messages/cure.ts';
import type { TemperatureUnit } from '../units/temperature.ts';
import { airLine, airLineWords, airTemperature, humidity } from './air.ts';

/** What is said of the probes that tell the shop's air, and of what one told that no air is like. */

const noStandIn = 'No other stands in for it: choose another one under Setup, Shop air, or type the air in.';

export const airProbesWords = {
  title: 'Which probe tells it',
  choose: 'The air is told by',
  whichever: 'whichever is heard',
  whicheverMeans:
    'The first that is heard tells it, until it has told no air for two minutes: then another one.',
  chosenMeans:
    'Only the chosen probe tells it. No other stands in while it is silent: that may hang where the air is another.',
  heard: 'taken for the air of the shop',
  beside: 'only shown here',
  told: (probe: string, air: string, counts: string) => `${probe}: ${air}; ${counts}.`,
  silent: (probe: string, air: string, since: string) =>
    `${probe}: has told no air since ${since}, when it was ${air}.`,
  wrong: (probe: string) => `${probe}: nothing that can be air, not taken.`,
  never: (probe: string) => `${probe}: not heard yet.`,
  isChosen: (probe: string) => `The air is told by ${probe} alone, from its next line on.`,
  isWhichever: 'The air is told by whichever probe is heard.',
  chosenSilent: (probe: string, since: string) =>
    `The probe that was chosen for the air, ${probe}, has told none since ${since}. ${noStandIn}`,
  chosenNever: (probe: string) =>
    `The probe that was chosen for the air, ${probe}, was not heard yet. ${noStandIn}`,
  clocksGoBy: (air: string) => `Clocks go by ${air}`,
} as const;

/** Why a probe can't be chosen to tell the air. */
export const airFromRefusals = {
  simulatedProbe: (probe: string) =>
    `${probe} is simulated: it tells nothing of this shop’s air. Choose a probe that hangs here.`,
  realProbe: (probe: string) =>
    `${probe} is a real probe: the simulated shop’s air is told by simulated ones. Choose it while the real iron is watched.`,
} as const;

const refusedWords: Readonly<
  Record<
    AirPart,
    { readonly what: (value: string) => string; readonly right: (unit: TemperatureUnit) => string }
  >
> = {
  airC: {
    what: (value) => value,
    right: (unit) =>
      `A shop’s air lies between ${airTemperature(AIR_LOWEST_C, unit)} and ${airTemperature(AIR_HIGHEST_C, unit)}.`,
  },
  rhPct: {
    what: (value) => `humidity ${value}`,
    right: () => 'Relative humidity lies between 0 % and 100 %.',
  },
};

/** Humidity to a tenth: one that was refused may be off by little. */
const refusedValue = (part: AirPart, value: number, unit: TemperatureUnit): string =>
  part === 'airC' ? airTemperature(value, unit) : `${Math.round(value * 10) / 10} %`;

/**
 * What a probe told that no air is like, and what would be right.
 * @param time the time of day at which it told it
 */
export function refusedText(
  probe: string,
  { part, value }: Pick<AirProbeAnswer['refused'][number], 'part' | 'value'>,
  time: string,
  unit: TemperatureUnit,
): string {
  const { what, right } = refusedWords[part];
  return `${probe} told ${what(refusedValue(part, value, unit))} at ${time}: not taken. ${right(unit)} Look at its sensor, its wires and its supply.`;
}

/** What the clocks go by, in a sentence. @param ago how long ago it was told, in words; empty where that isn't known */
export const clocksGoByText = (now: AirAnswer['now'], unit: TemperatureUnit, ago: string): string =>
  now === null ? airLineWords.unknown : airProbesWords.clocksGoBy(airLine(now, unit, ago));

/** How a probe stands, in a sentence. @param since the time of day at which it told air last; empty: never */
export function airProbeText(
  { probe, told, silent, heard, refused }: AirProbeAnswer,
  since: string,
  unit: TemperatureUnit,
): string {
  if (told === null) return refused.length > 0 ? airProbesWords.wrong(probe) : airProbesWords.never(probe);
  const air = [
    airTemperature(told.airC, unit),
    told.rhPct === null ? airLineWords.noHumidity : airLineWords.humidity(humidity(told.rhPct)),
  ].join(', ');
  if (silent) return airProbesWords.silent(probe, air, since);
  return airProbesWords.told(probe, air, heard ? airProbesWords.heard : airProbesWords.beside);
}
