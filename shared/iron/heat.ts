import { COLD_C } from '../thermometer/thermometer.ts';

/** Whether the iron is in use as far as its heat tells: a session is due from `hot` on, until it is `cold` again. */
export interface IronHeat {
  readonly is: 'cold' | 'hot';
  /** Since when all that was measured was cold; null while it isn't. */
  readonly coldSinceMs: number | null;
  /** When it was last measured. */
  readonly seenMs: number;
}

/** A plate that passes this is coming up, degC; above `COLD_C` so that it doesn't flutter. */
export const HOT_C = 45;
/** A plate measured cold for so long has ended its work, ms. */
const COLD_FOR_MS = 60_000;
/** Measured seldomer than this it has not been measured cold all the while, ms. */
const GAP_MS = 10_000;

export const coldIron: IronHeat = { is: 'cold', coldSinceMs: null, seenMs: 0 };

/**
 * Takes in what the iron's probes read.
 * @param hottestC the highest valid reading of its probes now, degC: one probe that has come off doesn't make it cold
 */
export function judgeHeat(
  before: IronHeat,
  tMs: number,
  hottestC: number,
): { readonly heat: IronHeat; readonly change: 'hot' | 'cold' | null } {
  if (before.is === 'cold') {
    const hot = hottestC >= HOT_C;
    return { heat: { is: hot ? 'hot' : 'cold', coldSinceMs: null, seenMs: tMs }, change: hot ? 'hot' : null };
  }
  if (hottestC >= COLD_C) return { heat: { is: 'hot', coldSinceMs: null, seenMs: tMs }, change: null };
  const goesOn = tMs - before.seenMs <= GAP_MS;
  const coldSinceMs = goesOn ? (before.coldSinceMs ?? tMs) : tMs;
  const cold = tMs - coldSinceMs >= COLD_FOR_MS;
  return { heat: { is: cold ? 'cold' : 'hot', coldSinceMs, seenMs: tMs }, change: cold ? 'cold' : null };
}
