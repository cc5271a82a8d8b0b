/** Why a coat's range is as wide as it is. */
export const rangeWhys = [
  /** No air is known at all: the instructions' own is assumed. */
  'no-air',
  /** Air was told once, long before it counts. */
  'old-air',
  /** The air is known, but not how it goes on. */
  'air-ahead',
  'no-humidity',
  'forecast',
  'typed',
  /** The machine's clock was wrong while it dried, and nobody knows for how long. */
  'clock',
  /** The instructions themselves give a range. */
  'instructions',
  /** Little or nothing was learned of how this cement dries here. */
  'not-learned',
  /** Only how much one day differs from another is left. */
  'days-differ',
] as const;
export type RangeWhy = (typeof rangeWhys)[number];
