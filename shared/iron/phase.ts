/** What the plate is doing as a whole. */
export const ironPhases = ['unknown', 'cold', 'warming', 'regulating', 'cooling'] as const;
export type IronPhase = (typeof ironPhases)[number];
