import { fToC } from '../units/temperature.ts';
import type { Air } from './air.ts';
import type { Cement } from './cement.ts';
import type { AirConcernKind } from './conditions.ts';
import { marginK } from './humid-air.ts';

/** What is amiss with the air, by the cement's own instructions or by general coating practice. */
export interface Concern {
  readonly kind: AirConcernKind;
  readonly by: 'instructions' | 'practice';
  /** What it should be: degC, percent, or kelvin over the dew point. */
  readonly limit: number;
}

/** MIL-HDBK-1110, 7.4: coatings are put on between 45 and 90 degF. */
const PRACTICE_LOW_C = fToC(45);
const PRACTICE_HIGH_C = fToC(90);
/** Marine painting practice: at most 85 % relative humidity, and the surface 3 K over the dew point at least. */
const PRACTICE_HIGH_RH_PCT = 85;
const PRACTICE_MARGIN_K = 3;

/**
 * What speaks against putting a cement on in this air, and letting it dry; none: general practice alone. The surface is
 * taken to be as warm as the air: a frame that has just been carried in from the cold is nearer to the dew point.
 */
export function airConcerns(cement: Pick<Cement, 'airLimits'> | null, air: Air): readonly Concern[] {
  const own = cement?.airLimits ?? { lowC: null, highC: null, lowRhPct: null, highRhPct: null };
  const concerns: Concern[] = [];
  const hold = (
    kind: AirConcernKind,
    limit: number | null,
    practice: number | null,
    beyond: (limit: number) => boolean,
  ) => {
    const held = limit ?? practice;
    if (held !== null && beyond(held))
      concerns.push({ kind, by: limit === null ? 'practice' : 'instructions', limit: held });
  };
  const { airC, rhPct } = air;
  hold('too-cold', own.lowC, PRACTICE_LOW_C, (limit) => airC < limit);
  hold('too-hot', own.highC, PRACTICE_HIGH_C, (limit) => airC > limit);
  if (rhPct !== null) {
    hold('too-humid', own.highRhPct, PRACTICE_HIGH_RH_PCT, (limit) => rhPct > limit);
    hold('too-dry', own.lowRhPct, null, (limit) => rhPct < limit);
  }
  const margin = marginK(air);
  if (margin !== null) hold('near-dew-point', null, PRACTICE_MARGIN_K, (limit) => margin < limit);
  return concerns;
}
