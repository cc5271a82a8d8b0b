/** How evenly a plate is hot: from two or three probes on it, or from spot readings that were typed. */
export interface Spot {
  /** A probe's id, or the name of the place. */
  readonly at: string;
  readonly plateC: number;
  /** Standard uncertainty, K. */
  readonly uK: number;
}

export interface Evenness {
  readonly hottest: Spot;
  readonly coldest: Spot;
  readonly meanC: number;
  /** Hottest less coldest, K, with the standard uncertainty of that difference: both spots taken as independent. */
  readonly spreadK: number;
  readonly spreadUK: number;
  /**
   * How far the hottest is over the leading spot, K, and its standard uncertainty; both 0 where that leads. Null where
   * the leading one has no reading.
   */
  readonly overLeadK: number | null;
  readonly overLeadUK: number | null;
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
  // Of equals the last: how well a difference is known is known of two spots, also where it is none.
  const coldest = read.reduce((a, b) => (b.plateC <= a.plateC ? b : a));
  const leading = read.find(({ at }) => at === lead);
  return {
    hottest,
    coldest,
    meanC: read.reduce((sum, { plateC }) => sum + plateC, 0) / read.length,
    spreadK: hottest.plateC - coldest.plateC,
    spreadUK: betweenUK(hottest, coldest),
    overLeadK: leading === undefined ? null : hottest.plateC - leading.plateC,
    overLeadUK: leading === undefined ? null : betweenUK(hottest, leading),
    count: read.length,
  };
}

/** Of the difference of two spots (GUM 5.1.2); a spot doesn't differ from itself. */
const betweenUK = (a: Spot, b: Spot): number => (a === b ? 0 : Math.hypot(a.uK, b.uK));

/** The hottest of spots, the first of equals; null where none has a reading. Limits apply to it. */
export const hottestOf = (spots: readonly Spot[]): Spot | null =>
  spots.reduce<Spot | null>((hottest, spot) => {
    if (!Number.isFinite(spot.plateC)) return hottest;
    return hottest === null || spot.plateC > hottest.plateC ? spot : hottest;
  }, null);

/** A difference within so many of its standard uncertainties may be none (k = 2, about 95 %, GUM 6.3). */
const TOLD_BY = 2;

/** What a difference may be off by, K: its expanded uncertainty. */
export const expandedK = (uK: number): number => TOLD_BY * uK;

/** How far the hottest spot known of a plate is over its probe's place: what a limit has to be held against. */
export interface Unevenness {
  /** K, over 0. */
  readonly overK: number;
  /** Its standard uncertainty, K. */
  readonly uK: number;
}
