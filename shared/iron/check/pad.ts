import { COLD_C } from '../../thermometer/thermometer.ts';
import { HOT_C } from '../heat.ts';
import { LEAST_LEVELS, type Level, riseS, settlingOf } from './settling.ts';

/**
 * Recognises checks in the readings of a check pad: the iron is parked on it (contact), the pad comes to the plate's
 * temperature (settled), and the iron is taken off (lift-off). Plain data, bounded.
 *
 * A pad is never hotter than the plate was on it, so all that it reads while the iron lies there is a temperature that
 * the plate had at least. Of a plate that a thermostat swings meanwhile, the hottest that was seen is the check's value,
 * since it is the limit that has to hold.
 */
export interface Pad {
  /** Means over a second or more, oldest first: the last half minute, and since contact as far as there is room. */
  readonly levels: readonly Level[];
  readonly open: {
    readonly fromMs: number;
    readonly sumMs: number;
    readonly sumC: number;
    readonly count: number;
  } | null;
  readonly lastMs: number | null;
  readonly contact: Contact | null;
}

export interface Contact {
  readonly fromMs: number;
  /** Null while it has not settled. */
  readonly settledMs: number | null;
  /** The highest level so far, degC, and when it was last read. */
  readonly hottestC: number;
  readonly toMs: number;
  /** The lowest level since it settled, degC; null before. */
  readonly lowestC: number | null;
  /** What was left of the way when it settled, with its error, K; before that, as it is now. Null: not known yet. */
  readonly remainingK: number | null;
}

/** A check: told once it has settled, and again as it ends, with the same `fromMs`. */
export interface CheckFound extends Contact {
  /** Null while the iron still lies there. */
  readonly ended: 'lifted' | 'lost' | null;
}

export interface PadStep {
  readonly pad: Pad;
  readonly found: readonly CheckFound[];
}

export interface PadFacts {
  readonly tMs: number;
  readonly padC: number;
  /** The pad's time constant where it was measured, as much as it may be; else null. */
  readonly tauS: number | null;
  /** Standard uncertainty of a settled reading, K: a way that is shorter than this is no matter. */
  readonly uK: number;
}

export const emptyPad: Pad = { levels: [], open: null, lastMs: null, contact: null };

/** Readings of so much time make a level, ms. */
const LEVEL_MS = 1000;
const KEEP_LEVELS = 90;
/** Where the time constant was not measured it may be so much, s (our own choice: a disc of 1 mm, pressed well). */
const UNMEASURED_PAD_S = 10;
/** It is judged over one time constant, but no less and no more than this, s. */
const LEAST_WINDOW_S = 4;
const MOST_WINDOW_S = 30;
/** A pad that rises so far in so long has an iron on it: no room warms up so fast. Our own choice. */
const CONTACT_K = 4;
const CONTACT_MS = 20_000;
/** Hot and falling slower than this, it has one on it too, K/s: by itself it would cool quicker. Our own choice. */
const HOLDS_K_PER_S = 0.1;
/** A settled plate may fall so fast, between its thermostat's peaks, K/s (our own choice, by the demo irons: 0.4). */
const SETTLED_FALL_K_PER_S = 0.5;
/**
 * A pad that falls so far in so long is bare, K and ms: 0.8 K/s, or for longer 0.6. No plate falls so fast on its rest (the
 * demo irons 0.4 K/s at most). Our own choice.
 */
const LIFTS = [
  { byK: 3.2, withinMs: 4000 },
  { byK: 4.8, withinMs: 8000 },
] as const;
/** So far under the hottest it is bare, however slowly it went: wider than any thermostat's swing. Our own choice. */
const BARE_K = 45;
/** Without a valid reading for so long, what lies on the pad is not known, ms. */
export const PAD_GAP_MS = 10_000;

/** Takes one more valid reading of the pad. */
export function onPad(before: Pad, facts: PadFacts): PadStep {
  const waited = padSilent(before, facts.tMs);
  const { pad, level } = addReading(waited.pad, facts);
  if (level === null) return { pad, found: waited.found };
  const judged = pad.contact === null ? judgeBare(pad, facts) : judgeContact(pad, pad.contact, level, facts);
  return { pad: judged.pad, found: [...waited.found, ...judged.found] };
}

/** Looks at the clock: a check ends where the pad has not read for long. */
export function padSilent(pad: Pad, tMs: number): PadStep {
  if (pad.lastMs === null || tMs - pad.lastMs <= PAD_GAP_MS) return { pad, found: [] };
  return { pad: emptyPad, found: pad.contact === null ? [] : [{ ...pad.contact, ended: 'lost' }] };
}

function addReading(pad: Pad, { tMs, padC }: PadFacts): { readonly pad: Pad; readonly level: Level | null } {
  const { open } = pad;
  const fresh = { fromMs: tMs, sumMs: 0, sumC: padC, count: 1 };
  if (open === null) return { pad: { ...pad, open: fresh, lastMs: tMs }, level: null };
  if (tMs - open.fromMs < LEVEL_MS) {
    const { fromMs, sumMs, sumC, count } = open;
    const more = { fromMs, sumMs: sumMs + tMs - fromMs, sumC: sumC + padC, count: count + 1 };
    return { pad: { ...pad, open: more, lastMs: tMs }, level: null };
  }
  const level = { tMs: open.fromMs + open.sumMs / open.count, levelC: open.sumC / open.count };
  return {
    pad: { ...pad, levels: [...pad.levels, level].slice(-KEEP_LEVELS), open: fresh, lastMs: tMs },
    level,
  };
}

/** Nothing lies on it, as far as is known: does something by now? */
function judgeBare(pad: Pad, facts: PadFacts): PadStep {
  const recent = pad.levels.filter((l) => l.tMs >= facts.tMs - CONTACT_MS - LEVEL_MS);
  const last = recent.at(-1);
  if (last === undefined) return { pad, found: [] };
  const coldest = recent.reduce((a, b) => (b.levelC <= a.levelC ? b : a));
  if (last.levelC - coldest.levelC >= CONTACT_K)
    return { pad: begun(pad, recent.slice(recent.indexOf(coldest))), found: [] };
  const bare = { ...pad, levels: recent };
  const held = settledWithin(bare, facts);
  const holds = held !== null && held.slopeKPerS > -HOLDS_K_PER_S && last.levelC >= HOT_C;
  if (!holds) return { pad: bare, found: [] };
  // A warm pad may have come down to the plate: only what it reads now is the plate's.
  return judgeContact(begun(pad, held.levels), contactOf([last]), last, facts);
}

const begun = (pad: Pad, levels: readonly Level[]): Pad => ({ ...pad, levels, contact: contactOf(levels) });

const contactOf = (levels: readonly Level[]): Contact => ({
  fromMs: Math.round(levels[0]?.tMs ?? 0),
  settledMs: null,
  hottestC: Math.max(...levels.map((l) => l.levelC)),
  toMs: Math.round(levels.at(-1)?.tMs ?? 0),
  lowestC: null,
  remainingK: null,
});

function judgeContact(pad: Pad, before: Contact, level: Level, facts: PadFacts): PadStep {
  if (isLifted(pad, before, level))
    return { pad: { ...pad, levels: [level], contact: null }, found: [{ ...before, ended: 'lifted' }] };
  const contact: Contact = {
    ...before,
    hottestC: Math.max(before.hottestC, level.levelC),
    toMs: Math.round(level.tMs),
    lowestC: before.lowestC === null ? null : Math.min(before.lowestC, level.levelC),
  };
  if (contact.settledMs !== null) return { pad: { ...pad, contact }, found: [] };
  const settled = settledWithin(pad, facts);
  if (settled === null) return { pad: { ...pad, contact }, found: [] };
  const { remainingK, standardK, isSettled } = settled;
  const left = { ...contact, remainingK: Math.max(0, remainingK) + standardK };
  if (!isSettled) return { pad: { ...pad, contact: left }, found: [] };
  const done = { ...left, settledMs: Math.round(level.tMs), lowestC: level.levelC };
  return { pad: { ...pad, contact: done }, found: [{ ...done, ended: null }] };
}

function isLifted({ levels }: Pad, { hottestC }: Contact, { tMs, levelC }: Level): boolean {
  // The one before counts however long ago it was: a slow board sends one in five seconds.
  const fell = LIFTS.some(({ byK, withinMs }) => {
    const lately = levels.filter((l, i) => l.tMs >= tMs - withinMs || i === levels.length - 2);
    return Math.max(...lately.map((l) => l.levelC)) - levelC >= byK;
  });
  return fell || levelC < hottestC - BARE_K;
}

interface Judged {
  readonly remainingK: number;
  readonly standardK: number;
  readonly slopeKPerS: number;
  readonly isSettled: boolean;
  readonly levels: readonly Level[];
}

/** How the last time constant went; null before there is that much of it. */
function settledWithin(pad: Pad, { tauS: measuredS, uK }: PadFacts): Judged | null {
  const { levels, contact } = pad;
  const last = levels.at(-1);
  if (last === undefined) return null;
  // A pad that turns out to be slower than was allowed for is given its time.
  const seenS = contact === null || levels[0]?.tMs === undefined ? 0 : (riseS(levels) ?? 0);
  const tauS = measuredS ?? Math.max(UNMEASURED_PAD_S, seenS);
  const windowMs = 1000 * Math.min(MOST_WINDOW_S, Math.max(LEAST_WINDOW_S, tauS));
  const from = levels.findLastIndex((l) => l.tMs <= last.tMs - windowMs + LEVEL_MS / 2);
  if (from === -1) return null;
  const within = levels.slice(Math.min(from, Math.max(0, levels.length - LEAST_LEVELS)));
  const settling = settlingOf(within, tauS);
  if (settling === null) return null;
  const { remainingK, standardK, slopeKPerS } = settling;
  const isSettled = remainingK + standardK <= uK && slopeKPerS >= -SETTLED_FALL_K_PER_S;
  return { remainingK, standardK, slopeKPerS, isSettled, levels: within };
}

/** Whether a check says that the plate is under what may be called hot, by the hottest that it saw. */
export const saysCold = ({ settledMs, hottestC }: Pick<Contact, 'settledMs' | 'hottestC'>): boolean =>
  settledMs !== null && hottestC < COLD_C;
