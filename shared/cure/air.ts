import { z } from 'zod';

/** Shop air: what was told of it, and what of that can be air at all. */

/** What a shop's air can be, degC: outside of it a sensor or a typing finger is wrong. */
export const AIR_LOWEST_C = -30;
export const AIR_HIGHEST_C = 60;

export const airTemperatureC = z.number().min(AIR_LOWEST_C).max(AIR_HIGHEST_C);
export const relativeHumidityPct = z.number().min(0).max(100);

/** Air at a moment, as far as it is known. */
export interface Air {
  readonly airC: number;
  /** Relative humidity, percent; null: not told. */
  readonly rhPct: number | null;
}

/** How air came to be known. */
export const airHows = ['probe', 'typed', 'forecast'] as const;
export type AirHow = (typeof airHows)[number];

/** Air as it was told, and holds until something else is told. */
export interface AirPoint extends Air {
  readonly atUtcMs: number;
  readonly how: AirHow;
}

/** What a forecast says of one moment. */
export const forecastPointSchema = z
  .strictObject({
    atUtcMs: z.number().int(),
    airC: airTemperatureC,
    rhPct: relativeHumidityPct.nullable(),
  })
  .readonly();
