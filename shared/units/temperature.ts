/** Conversion and display of temperatures. Inside the program every temperature is in degrees Celsius. */

/** 0 K in degrees Celsius (definition of the Celsius scale, BIPM SI brochure). */
export const ABSOLUTE_ZERO_C = -273.15;

export type TemperatureUnit = 'F' | 'C';

/** Degrees Celsius to degrees Fahrenheit: exact by definition, F = 9/5 C + 32. */
export const cToF = (c: number): number => (c * 9) / 5 + 32;

/** Degrees Fahrenheit to degrees Celsius: exact by definition, C = 5/9 (F - 32). */
export const fToC = (f: number): number => ((f - 32) * 5) / 9;

/** A temperature in `unit`, rounded to `digits` decimals, without its unit sign. */
export const temperatureFigure = (c: number, unit: TemperatureUnit, digits = 0): string =>
  rounded(unit === 'F' ? cToF(c) : c, digits);

/** A temperature with its unit sign, for example "350 °F". */
export const formatTemperature = (c: number, unit: TemperatureUnit, digits = 0): string =>
  `${temperatureFigure(c, unit, digits)} °${unit}`;

/** A difference of temperatures (no offset) with its unit sign, for example "4 °F". */
export const formatTemperatureDifference = (k: number, unit: TemperatureUnit, digits = 0): string =>
  `${rounded(unit === 'F' ? (k * 9) / 5 : k, digits)} °${unit}`;

/** Rounds, and never says "-0". */
function rounded(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
