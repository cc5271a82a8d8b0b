/** How evenly a plate is hot: from two or three probes on it, or from spot readings that were typed. */
export interface Spot {
  /** A probe's id, or the name of the place. */
  readonly at: string;
  readonly plateC: number;
}

export interface Evenness {
  readonly hottest: Spot;
  readonly coldest: Spot;
  readonly meanC: number;
  /** Hottest less coldest, K. */
  readonly spreadK: number;
  /** How far the hottest is over the leading spot, K, 0 where it leads; null where the leading one has no reading. */
  readonly overLeadK: number | null;
  readonly count: number;
}

/**
 * The evenness of a plate by readings of one moment, or of means over whole thermostat cycles: spots that were read one
 * after the other on a swinging plate differ by its swing, which the caller has to keep out. The first of equals counts.
 * Limits apply to the hottest.
 * @param lead the spot whose reading stands for the plate
 * @returns null for fewer than two readings
 */
export function evennessOf(spots: readonly Spot[], lead: string): Evenness | null {
  const read = spots.filter(({ plateC }) => Number.isFinite(plateC));
  const hottest = hottestOf(read);
  if (hottest === null || read.length < 2) return null;
  const coldest = read.reduce((a, b) => (b.plateC < a.plateC ? b : a));
  const leading = read.find(({ at }) => at === lead);
  return {
    hottest,
    coldest,
    meanC: read.reduce((sum, { plateC }) => sum + plateC, 0) / read.length,
    spreadK: hottest.plateC - coldest.plateC,
    overLeadK: leading === undefined ? null : hottest.plateC - leading.plateC,
    count: read.length,
  };
}

/** The hottest of spots, the first of equals; null where none has a reading. Limits apply to it. */
export const hottestOf = (spots: readonly Spot[]): Spot | null =>
  spots.reduce<Spot | null>((hottest, spot) => {
    if (!Number.isFinite(spot.plateC)) return hottest;
    return hottest === null || spot.plateC > hottest.plateC ? spot : hottest;
  }, null);

/**
 * How much over the leading spot to expect the hottest, K, from several looks at one plate: the largest that was seen,
 * since a limit must hold for it; null where none says.
 */
export function expectedOverLeadK(looks: readonly Evenness[]): number | null {
  const known = looks.map(({ overLeadK }) => overLeadK).filter((k) => k !== null);
  return known.length === 0 ? null : Math.max(...known);
}
