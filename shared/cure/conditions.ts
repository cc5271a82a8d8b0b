/** What the air should be for a cement to be put on and to dry. */

export const airConcernKinds = ['too-cold', 'too-hot', 'too-humid', 'too-dry', 'near-dew-point'] as const;
export type AirConcernKind = (typeof airConcernKinds)[number];
