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
  dewPoint: (dewPoint: string, margin: string) => `${margin} over the dew point of ${dewPoint}`,
  told: (how: string, ago: string) => (ago === '' ? how : `${how}, ${ago}`),
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

/** Setup's part about the air. */
export const airPartWords = {
  notRead: (why: string) => `The shop’s air could not be read. ${why}`,
  reading: 'Reading the air …',
  now: 'Now',
  dewPoint: 'Dew point',
  dewPointIs: (dewPoint: string, margin: string) => `${dewPoint}; the air is ${margin} over it`,
  dewPointUnknown: 'can’t be said without humidity',
  known: 'Known',
  byProbe: (probe: string) => `by the probe ${probe}`,
  concerns: 'What is amiss with it',
  noConcern: 'Nothing is amiss with it by the limits that were entered and by general coating practice.',
  concernsMean:
    'For a surface that is as warm as the air: a frame from a cold place is nearer to the dew point. The cement’s own instructions decide.',
  noneYet:
    'Nothing is known of the shop’s air. Clocks go by the air of the instructions until it is told, and their ranges are wide.',
} as const;

export const typedAirWords = {
  title: 'Type it in',
  means:
    'What a thermometer and a hygrometer show, at the height of the work and away from the heater. Type it again when it has changed.',
  temperature: 'Temperature',
  humidity: 'Relative humidity',
  probeTells: 'A probe tells the air: its next reading takes the place of what you type here.',
  humidityMeans: 'Empty: not known. Clocks of cements that go by it get wider ranges.',
  keep: 'Keep this air',
  kept: (temperature: string, humidity: string) => `Kept: ${temperature}, ${humidity}.`,
  taken: (temperature: string, humidity: string) => `Taken: ${temperature}, ${humidity}.`,
  percent: (text: string) => `${text} %`,
} as const;

export const forecastWords = {
  title: 'A day’s forecast',
  means:
    'How warm and humid the shop will be, as far as you know: from a weather report, or from how it goes in your shop. Clocks look ahead by it; the air that is told counts once it is there.',
  stands: (until: string) => `A forecast stands until ${until}.`,
  none: 'No forecast stands: clocks go by the air of now.',
  hour: 'Hour',
  temperature: 'Temperature',
  humidity: 'Humidity',
  row: (place: number) => `row ${place}`,
  of: (field: string, row: string) => `${field}, ${row}`,
  rowsMean: 'Rows without temperature are left out; humidity may stay empty.',
  add: 'Add an hour',
  save: 'Keep this forecast',
  unsaved: 'Not kept yet.',
  drop: 'Drop what I typed',
  clear: 'Clear the forecast',
  kept: (until: string) => `Kept: the forecast stands until ${until}.`,
  taken: (until: string) => `Taken: the forecast stands until ${until}.`,
  cleared: 'Cleared: no forecast stands.',
  putBack: 'Put back as it was.',
  wrongHour: 'Write an hour from 0 to 23, for example 14 or 14:30.',
  notRising: (before: string) => `Each row must come after the one before, which is ${before}.`,
  past: 'That hour is past. Write a later one, or take its temperature out.',
  noTemperature: 'Write the temperature too, or take the humidity out.',
  empty: 'Fill in one row at least, or clear the forecast.',
  wrongFields: 'Not kept: something in the rows needs a look. It says what would be right.',
} as const;

export const airHistoryWords = {
  title: 'The last 24 hours',
  none: 'Nothing was told in the last 24 hours.',
  temperature: 'Temperature',
  humidity: 'Relative humidity',
  drawn: (what: string, low: string, high: string) => `${what} of the last 24 hours: from ${low} to ${high}.`,
  gap: (from: string, to: string) => `Nothing was heard of the probe from ${from} to ${to}.`,
  byProbe: 'by a probe',
  dots: 'Dots: typed in.',
  time: 'time of day',
  table: 'The same as a table, by the hour',
  caption: 'Lowest and highest of each hour',
  hour: 'Hour',
  nothing: 'nothing told',
  between: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
} as const;

export const airProbeWords = {
  title: 'An air probe tells it by itself',
  means:
    'Any board that sends lines can tell the air: a sensor for temperature and humidity, and the keys ta (°C) and rh (%) in a line of its own or in another probe’s. For example:',
  line: 'p=air ta=21.4 rh=56.0',
  hang: 'Hang it at the height of the coats, out of the iron’s plume and the heater’s blast.',
  more: 'How to build one stands in firmware-notes/air-probe.md.',
} as const;

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
