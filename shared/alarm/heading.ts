import { TURN_K } from '../iron/turning.ts';
import type { PlateEstimate } from '../thermometer/lag/filter.ts';
import type { Condition } from './machine.ts';

/** Whether a plate heads for its limit, by the filter's slope and by what its thermostat usually does. */

/** Seconds before the limit at which the warning comes. */
export const WARN_S = 8;
/**
 * The same until this thermostat's peaks are known: a plate that comes up for the first time goes on for some seconds
 * after the click, and must not be cried at for what its slope was before.
 */
export const WARN_FIRST_S = 6;
/** The warning is taken back where the limit is this many times further off, s/s. */
const TAKE_BACK_TIMES = 1.5;
/** A plate may pass what its thermostat usually does by this much before it is held against it, K. */
const MARGIN_K = 2;
/** Peaks that are expected this far under the usual one tell of a dial that was turned down, K. */
const TURNED_DOWN_K = 10;
/** A plate this far under a rise whose peak never counted was let down from it, K: wider than any swing listed. */
const LET_DOWN_K = 45;

export interface HeadingFacts {
  /** The reading itself, degC; null where there is no valid one. */
  readonly readC: number | null;
  readonly estimate: PlateEstimate | null;
  /** The limit with the probe's guard band taken off, degC. */
  readonly limitC: number;
  /** The highest peak to expect of this thermostat, degC; null until it has turned by itself. */
  readonly expectedPeakC: number | null;
}

/**
 * How far this thermostat's plate usually gets in the rises that end in a peak by themselves: its own peak, corrected
 * for lag, and the highest temperature that its slope would have brought it to within `WARN_S`. A plate whose contacts
 * have stuck goes beyond the second as soon as the click is due, several kelvins before it passes its peaks.
 */
export interface Reach {
  /** Of the rise that is under way, until the plate has come back from it; null before one. */
  readonly rising: Far | null;
  /** Of the rises before; null while no peak is known. */
  readonly usual: Far | null;
}

/** The highest of a rise. */
interface Far {
  /** degC */
  readonly plateC: number;
  /** degC */
  readonly aheadC: number;
  /** True once a reading was over the limit: such a rise is never usual. */
  readonly over: boolean;
}

export const noReach: Reach = { rising: null, usual: null };

/** Where the plate may be at the most, its unmeasured lag counted, degC. */
const highestC = (e: PlateEstimate): number => e.plateC + Math.max(0, e.aheadK);

/** Where its slope would bring it within `WARN_S`, degC. */
const wouldBeC = (e: PlateEstimate): number => highestC(e) + WARN_S * Math.max(0, e.slopeKPerS);

const further = (a: Far, b: Far | null): Far =>
  b === null
    ? a
    : { plateC: Math.max(a.plateC, b.plateC), aheadC: Math.max(a.aheadC, b.aheadC), over: a.over || b.over };

/** Takes one more reading in, after it has been judged. */
export function followReach(was: Reach, { readC, estimate, limitC, expectedPeakC }: HeadingFacts): Reach {
  const known = isOver(was, expectedPeakC) ? noReach : was;
  if (readC === null || estimate === null)
    return known.rising === null ? known : { rising: null, usual: known.usual };
  const { rising, usual } = known;
  const { plateC, slopeKPerS } = estimate;
  if (rising === null && slopeKPerS <= 0) return known;
  if (rising === null || plateC > rising.plateC - TURN_K) {
    const here = { plateC, aheadC: wouldBeC(estimate), over: readC >= limitC };
    return { rising: further(here, rising), usual };
  }
  if (plateC < rising.plateC - LET_DOWN_K) return { rising: null, usual };
  // The rise is over, but counts only once its peak does.
  if (expectedPeakC === null || expectedPeakC < rising.plateC - TURNED_DOWN_K) return known;
  return { rising: null, usual: rising.over ? usual : further(rising, usual) };
}

/** Another setting of the dial, or an iron that went cold: what was usual is so no longer. */
const isOver = ({ usual }: Reach, expectedPeakC: number | null): boolean =>
  usual !== null && (expectedPeakC === null || expectedPeakC < usual.plateC - TURNED_DOWN_K);

/**
 * Seconds until the plate passes the limit at its present slope, its unmeasured lag counted; null where it doesn't rise
 * by more than what is not known of its slope.
 */
export function secondsToLimit(estimate: PlateEstimate, limitC: number): number | null {
  if (estimate.slopeKPerS <= estimate.slopeStandardKPerS) return null;
  return Math.max(0, limitC - highestC(estimate)) / estimate.slopeKPerS;
}

/** @param reach as it was before this reading */
export function headingForLimit(facts: HeadingFacts, reach: Reach): Condition {
  const { readC, estimate, limitC, expectedPeakC } = facts;
  if (readC === null || estimate === null) return 'unknown';
  // Over the limit already: another alarm's.
  if (readC >= limitC) return 'in-deadband';
  // What the probe will read shortly; one that falls already may stay under it.
  if (estimate.plateC >= limitC) return estimate.slopeKPerS > 0 ? 'beyond' : 'in-deadband';
  const leftS = secondsToLimit(estimate, limitC);
  if (leftS === null || isUsual(estimate, facts, reach)) return 'inside';
  const warnS = expectedPeakC === null ? WARN_FIRST_S : WARN_S;
  if (leftS <= warnS) return 'beyond';
  return leftS <= TAKE_BACK_TIMES * warnS ? 'in-deadband' : 'inside';
}

/** True where the plate does what it does in every cycle, and that stays under the limit. */
function isUsual(
  estimate: PlateEstimate,
  { limitC, expectedPeakC }: HeadingFacts,
  { usual }: Reach,
): boolean {
  if (usual !== null)
    return estimate.plateC <= usual.plateC + MARGIN_K && wouldBeC(estimate) <= usual.aheadC + MARGIN_K;
  if (expectedPeakC === null || expectedPeakC >= limitC) return false;
  return estimate.plateC <= expectedPeakC + MARGIN_K;
}
