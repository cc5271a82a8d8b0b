import { z } from 'zod';
import { probeIdSchema } from '../thermometer/probe.ts';

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

export const airParts = ['airC', 'rhPct'] as const satisfies readonly (keyof Air)[];
export type AirPart = (typeof airParts)[number];

/** A sensor in saturated air may tell so much, percent, within its tolerance: it counts as 100. */
export const RH_TOLD_HIGHEST_PCT = 105;

/** A part of the air as a sensor told it; null where no air is like that. */
export function partOf(part: AirPart, told: number): number | null {
  if (part === 'airC') return airTemperatureC.safeParse(told).success ? told : null;
  return told < 0 || told > RH_TOLD_HIGHEST_PCT ? null : Math.min(told, 100);
}

/** Which probe tells the air: one that the user has chosen; null: whichever is heard. */
export const airFromSchema = z.strictObject({ probe: probeIdSchema.nullable() });
export type AirFrom = z.infer<typeof airFromSchema>;
export const usualAirFrom: AirFrom = { probe: null };

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
