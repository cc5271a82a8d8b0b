import type { AirHow } from '../cure/air.ts';
import type { AirConcernKind } from '../cure/conditions.ts';
import type { AirAnswer, AirConcern } from '../messages/cure.ts';
import {
  formatTemperature,
  formatTemperatureDifference,
  type TemperatureUnit,
} from '../units/temperature.ts';

/**
 * What is said of the shop's air, wherever it is told: `airLine` has it in one line, `concernText` what is amiss with it
 * for a cement.
 */

/** How air came to be known. */
export const airHowWords: Readonly<Record<AirHow, string>> = {
  probe: 'by a probe',
  typed: 'typed',
  forecast: 'by the forecast',
};

export const airLineWords = {
  unknown: 'The shop’s air is not known: clocks go by the instructions’ own air.',
  humidity: (percent: string) => `${percent} humidity`,
  noHumidity: 'humidity not told',
  dewPoint: (dewPoint: string, margin: string) => `dew point ${dewPoint}, ${margin} below it`,
  told: (how: string, ago: string) => (ago === '' ? how : `${how}, ${ago} ago`),
  old: 'It may be something else by now.',
} as const;

/** Air temperatures to a whole degree Fahrenheit or a tenth of a degree Celsius; digits that no shop probe knows mislead. */
const digits = (unit: TemperatureUnit): number => (unit === 'C' ? 1 : 0);

/** An air temperature, for example "72 °F" or "22.3 °C". */
export const airTemperature = (c: number, unit: TemperatureUnit): string =>
  formatTemperature(c, unit, digits(unit));

/** How far two air temperatures are apart, for example "5 °F". */
export const airDifference = (k: number, unit: TemperatureUnit): string =>
  formatTemperatureDifference(k, unit, digits(unit));

/** A relative humidity, for example "56 %". */
export const humidity = (rhPct: number): string => `${rhPct.toFixed(0)} %`;

/**
 * The air of now in one line: temperature, humidity, dew point, how it is known.
 * @param ago how long ago it was told, in words; empty where that isn't known
 */
export function airLine(now: AirAnswer['now'], unit: TemperatureUnit, ago: string): string {
  if (now === null) return airLineWords.unknown;
  const { airC, rhPct, dewPointC, marginK, how, old } = now;
  const facts = [
    airTemperature(airC, unit),
    rhPct === null ? airLineWords.noHumidity : airLineWords.humidity(humidity(rhPct)),
    ...(dewPointC === null || marginK === null
      ? []
      : [airLineWords.dewPoint(airTemperature(dewPointC, unit), airDifference(marginK, unit))]),
  ];
  const line = `${facts.join(', ')} (${airLineWords.told(airHowWords[how], ago)}).`;
  return old ? `${line} ${airLineWords.old}` : line;
}

/** What the air would have to be. `who`: the cements that it holds for, or cement as such. */
const amiss: Readonly<Record<AirConcernKind, (who: string, limit: string) => string>> = {
  'too-cold': (who, limit) => `Too cold for ${who}: ${limit} at least`,
  'too-hot': (who, limit) => `Too hot for ${who}: ${limit} at most`,
  'too-humid': (who, limit) => `Too humid for ${who}: ${limit} at most`,
  'too-dry': (who, limit) => `Too dry for ${who}: ${limit} at least`,
  'near-dew-point': (who, limit) =>
    `Too near the dew point for ${who}, water may condense on it: ${limit} over it at least`,
};

const by: Readonly<Record<AirConcern['by'], string>> = {
  instructions: 'by the instructions',
  practice: 'by general coating practice; the instructions decide',
};

const limitText = ({ kind, limit }: AirConcern, unit: TemperatureUnit): string => {
  switch (kind) {
    case 'too-cold':
    case 'too-hot':
      return airTemperature(limit, unit);
    case 'near-dew-point':
      return airDifference(limit, unit);
    case 'too-humid':
    case 'too-dry':
      return humidity(limit);
  }
};

/** What is amiss with the air, in a sentence that says for which cements and by whose word. */
export const concernText = (concern: AirConcern, unit: TemperatureUnit): string => {
  const who = concern.cements.length === 0 ? 'cement' : concern.cements.join(', ');
  return `${amiss[concern.kind](who, limitText(concern, unit))}, ${by[concern.by]}.`;
};
