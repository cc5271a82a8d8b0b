import { fToC } from '../units/temperature.ts';

/** What the air should be for a cement to be put on and to dry. */

export const airConcernKinds = ['too-cold', 'too-hot', 'too-humid', 'too-dry', 'near-dew-point'] as const;
export type AirConcernKind = (typeof airConcernKinds)[number];

/**
 * General coating practice, which stands in where a cement's instructions don't say: put on between 45 and 90 degF
 * (MIL-HDBK-1110, 7.4.1), at most 85 % relative humidity and at least 3 K over the dew point (marine painting practice).
 */
export const coatingPractice = { lowC: fToC(45), highC: fToC(90), highRhPct: 85, marginK: 3 } as const;
