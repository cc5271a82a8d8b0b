import { type LagFilter, trackPlate, unmeasuredProbe } from '../../../shared/thermometer/lag/filter.ts';

/**
 * Contact from the heat that the work draws, by readings of one iron alone. On its rest a plate loses k (T - air) while
 * its heater is off, and gains P less that while it is on (Newton's law of cooling): two numbers that are learned of
 * each iron. What a slope lacks against them is what the work draws.
 */
export interface SlopeContact {
  readonly filter: LagFilter | null;
  readonly rising: boolean;
  readonly turnedMs: number;
  /** k, 1/s, and P, K/s, with how many seconds each was learned from; null before. */
  readonly loss: Learned | null;
  readonly gain: Learned | null;
  readonly strays: { readonly rising: Stray; readonly falling: Stray };
  readonly contact: boolean;
}

interface Learned {
  readonly value: number;
  readonly count: number;
}

/** How far the share that seems to be drawn strays while the iron is on its rest: its mean square. */
type Stray = Learned | null;

export const noSlopeContact: SlopeContact = {
  filter: null,
  rising: false,
  turnedMs: 0,
  loss: null,
  gain: null,
  strays: { rising: null, falling: null },
  contact: false,
};

/** Heat takes so long from the heater to the plate and on to the probe: before that a slope tells of the turn, ms. */
const SETTLES_MS = 8000;
/** At least so much more drawn than on the rest, as a share of that, is work. */
const CONTACT_FROM = 0.3;
const AIR_C = 21;
/** Closer to the air than this nothing can be told, K. */
const LEAST_OVER_AIR_K = 40;
const KEEPS = 600;

export interface SlopeHeard {
  readonly tMs: number;
  readonly readC: number;
  /** True while it may learn what the iron does on its rest: told by the truth, better than any mark. */
  readonly taught: boolean;
  /** How many times what strays on the rest counts as work: few finds more, many is surer. */
  readonly strayTimes: number;
}

/** Takes one more reading in. */
export function stepSlopeContact(
  was: SlopeContact,
  { tMs, readC, taught, strayTimes }: SlopeHeard,
): SlopeContact {
  const filter = trackPlate(was.filter, tMs, readC, unmeasuredProbe);
  const overK = filter.plateC - AIR_C;
  const rising = filter.slopeKPerS > 0;
  const turnedMs = rising === was.rising ? was.turnedMs : tMs;
  const now = { ...was, filter, rising, turnedMs };
  if (tMs - turnedMs < SETTLES_MS || overK < LEAST_OVER_AIR_K) return now;
  const known = taught ? { ...now, ...learn(now, overK) } : now;
  const drawn = drawnShare(known, overK);
  if (drawn === null) return { ...known, contact: false };
  const side = rising ? 'rising' : 'falling';
  const strays = taught ? { ...known.strays, [side]: mean(known.strays[side], drawn * drawn) } : known.strays;
  const fromShare = Math.max(CONTACT_FROM, strayTimes * Math.sqrt(strays[side]?.value ?? 0));
  const contact = drawn >= fromShare || (was.contact && drawn >= fromShare / 2);
  return { ...known, strays, contact };
}

function learn(now: SlopeContact, overK: number): Pick<SlopeContact, 'loss' | 'gain'> {
  const slope = now.filter?.slopeKPerS ?? 0;
  if (!now.rising) return { loss: mean(now.loss, -slope / overK), gain: now.gain };
  if (now.loss === null) return now;
  return { loss: now.loss, gain: mean(now.gain, slope + now.loss.value * overK) };
}

function mean(was: Learned | null, value: number): Learned {
  const count = Math.min(KEEPS, (was?.count ?? 0) + 1);
  const before = was?.value ?? value;
  return { value: before + (value - before) / count, count };
}

/** What is drawn beside the loss on the rest, as a share of that; null while that isn't known. */
function drawnShare({ filter, rising, loss, gain }: SlopeContact, overK: number): number | null {
  if (filter === null || loss === null || (rising && gain === null)) return null;
  const restKPerS = (rising ? (gain?.value ?? 0) : 0) - loss.value * overK;
  return (restKPerS - filter.slopeKPerS) / (loss.value * overK);
}
