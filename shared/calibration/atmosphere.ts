/**
 * The standard atmosphere of ISO 2533:1975 (the same as the ICAO's) in its lowest layer, where temperature falls by
 * 6.5 K a kilometre of geopotential altitude.
 */
const SEA_LEVEL_HPA = 1013.25;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const GRAVITY_M_PER_S2 = 9.80665;
/**
 * Specific gas constant of the standard's air, J/(kg K), to the six digits with which every row of the printed table comes
 * out. The 287.05287 that is quoted for it (from memory) makes two of 41 rows differ in their sixth digit.
 */
const AIR_J_PER_KG_K = 287.053;
const EXPONENT = GRAVITY_M_PER_S2 / (AIR_J_PER_KG_K * LAPSE_K_PER_M);

/** The layer's ends, m. */
const ATMOSPHERE_RANGE_M = { min: -2000, max: 11_000 } as const;

/**
 * Standard air pressure, hPa, at an altitude in m over sea level; null outside -2000 to 11,000 m and for NaN.
 * The standard counts in geopotential metres. At 4000 m by the tape they are 2.5 m fewer: 0.2 hPa, which the weather
 * outdoes a hundredfold, so that an altitude from a map is good enough.
 */
export function standardPressureHpa(altitudeM: number): number | null {
  if (!(altitudeM >= ATMOSPHERE_RANGE_M.min && altitudeM <= ATMOSPHERE_RANGE_M.max)) return null;
  return SEA_LEVEL_HPA * (1 - (LAPSE_K_PER_M * altitudeM) / SEA_LEVEL_K) ** EXPONENT;
}
