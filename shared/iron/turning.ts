/**
 * Turning points of a temperature: a peak counts once the plate has fallen from it by the threshold, a trough once it
 * has risen. Smaller wiggles are noise or a lift of the iron.
 */
export interface Turning {
  readonly direction: 'rising' | 'falling' | 'unknown';
  readonly last: Point;
  /** The highest (rising) or lowest (falling) point since the last turn. */
  readonly extreme: Point;
}

export interface Point {
  readonly tMs: number;
  readonly plateC: number;
  /** Integral of the temperature over time since the beginning, K s: differences of it give means. */
  readonly integralCs: number;
}

/** A swing smaller than this is no thermostat's, K (our own choice: household irons swing by 25 K and more). */
export const TURN_K = 3;

export interface Turned {
  readonly turning: Turning;
  /** The turning point that this reading has confirmed. */
  readonly turn: { readonly kind: 'peak' | 'trough'; readonly point: Point } | null;
}

export function startTurning(tMs: number, plateC: number): Turning {
  const point = { tMs, plateC, integralCs: 0 };
  return { direction: 'unknown', last: point, extreme: point };
}

/**
 * Takes one more reading in; between two readings the plate is taken to have gone in a straight line.
 * @param turnK how far the plate must come back before a turning point counts, K
 */
export function follow(before: Turning, tMs: number, plateC: number, turnK: number): Turned {
  const { last, extreme, direction } = before;
  const meanC = (plateC + last.plateC) / 2;
  const now = { tMs, plateC, integralCs: last.integralCs + (meanC * (tMs - last.tMs)) / 1000 };
  const rise = plateC - extreme.plateC;
  if (direction === 'unknown') {
    if (Math.abs(rise) < turnK) return { turning: { ...before, last: now }, turn: null };
    return { turning: { direction: rise > 0 ? 'rising' : 'falling', last: now, extreme: now }, turn: null };
  }
  const onward = direction === 'rising' ? rise >= 0 : rise <= 0;
  if (onward) return { turning: { direction, last: now, extreme: now }, turn: null };
  if (Math.abs(rise) < turnK) return { turning: { ...before, last: now }, turn: null };
  return {
    turning: { direction: direction === 'rising' ? 'falling' : 'rising', last: now, extreme: now },
    turn: { kind: direction === 'rising' ? 'peak' : 'trough', point: extreme },
  };
}
