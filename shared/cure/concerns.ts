import type { Air } from './air.ts';
import type { Cement } from './cement.ts';
import { type AirConcernKind, coatingPractice } from './conditions.ts';
import { marginK } from './humid-air.ts';

/** What is amiss with the air, by the cement's own instructions or by general coating practice. */
export interface Concern {
  readonly kind: AirConcernKind;
  readonly by: 'instructions' | 'practice';
  /** What it should be: degC, percent, or kelvin over the dew point. */
  readonly limit: number;
}

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
  hold('too-cold', own.lowC, coatingPractice.lowC, (limit) => airC < limit);
  hold('too-hot', own.highC, coatingPractice.highC, (limit) => airC > limit);
  if (rhPct !== null) {
    hold('too-humid', own.highRhPct, coatingPractice.highRhPct, (limit) => rhPct > limit);
    hold('too-dry', own.lowRhPct, null, (limit) => rhPct < limit);
  }
  const margin = marginK(air);
  if (margin !== null) hold('near-dew-point', null, coatingPractice.marginK, (limit) => margin < limit);
  return concerns;
}
