import { TURN_K } from './turning.ts';

/**
 * How far the plate swings while it is regulated: a band around it that widens at once and narrows slowly. A turning
 * point counts only where the plate comes back by a good part of it, so that the dips of passes over the work, which
 * ride on the thermostat's own swing, don't pass for cycles.
 */
export interface Swing {
  readonly tMs: number;
  readonly highestC: number;
  readonly lowestC: number;
}

/** The band narrows to 1/e in this time, s: far longer than a cycle, short enough to forget an odd dip. */
const NARROWS_S = 1200;
/**
 * The same before a whole cycle is known, s: the fall from the first peak, which comes up higher, or from a dial that was
 * turned down, says nothing of the swing and would hide a smaller one for long (our own choice, by simulation).
 */
const NARROWS_AT_FIRST_S = 90;
/** The part of the swing by which the plate must come back (our own choice, by simulation). */
const TURN_SHARE = 0.35;

/**
 * Takes one more temperature in.
 * @param known whether a whole cycle of this swing has been seen
 */
export function widen(before: Swing | null, tMs: number, plateC: number, known: boolean): Swing {
  if (before === null) return { tMs, highestC: plateC, lowestC: plateC };
  const narrowsS = known ? NARROWS_S : NARROWS_AT_FIRST_S;
  const share = 1 - Math.exp(-(tMs - before.tMs) / (1000 * narrowsS));
  const inwardsK = ((before.highestC - before.lowestC) * share) / 2;
  return {
    tMs,
    highestC: Math.max(plateC, before.highestC - inwardsK),
    lowestC: Math.min(plateC, before.lowestC + inwardsK),
  };
}

/** How far the plate must come back before a turning point counts, K. */
export const turnThresholdK = (swing: Swing | null): number =>
  swing === null ? TURN_K : Math.max(TURN_K, TURN_SHARE * (swing.highestC - swing.lowestC));
