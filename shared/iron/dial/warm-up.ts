import type { HeatedUp } from './figures.ts';
import { type Look, levelOf } from './look.ts';

/** An iron that stands cold on its rest, or comes up from there. */
export interface WarmUp {
  /** When it last stood as cold as before, and where it stood. */
  readonly stoodMs: number;
  readonly stoodC: number;
}

/** A plate within this of where it stood still stands, K (our own choice: over the noise of a coarse probe). */
const STANDS_K = 1;
/** A cold plate that goes away from where it stood for longer than this follows the room, ms: a heater is quicker. */
const FOLLOWS_ROOM_MS = 120_000;

/** Follows an iron from cold to the first peak; null where that can't be told: it was warm already, or is being used. */
export function followWarmUp(before: WarmUp | null, look: Look): WarmUp | null {
  const levelC = levelOf(look);
  if (levelC === null || look.place === 'on-work') return null;
  const { phase } = look.behaviour;
  if (phase === 'warming') return before;
  if (phase !== 'cold') return null;
  const here = { stoodMs: look.tMs, stoodC: levelC };
  if (before === null || levelC < before.stoodC - STANDS_K) return here;
  if (levelC <= before.stoodC + STANDS_K) return { ...before, stoodMs: look.tMs };
  return look.tMs - before.stoodMs > FOLLOWS_ROOM_MS ? here : before;
}

/** What the warm-up gives once its first peak is known; null where the plate came to be regulated without one. */
export function heatedUpBy(warmUp: WarmUp, { behaviour: { peak } }: Look): HeatedUp | null {
  if (peak === null || peak.tMs <= warmUp.stoodMs) return null;
  return { fromC: warmUp.stoodC, timeS: (peak.tMs - warmUp.stoodMs) / 1000, peakC: peak.plateC };
}
