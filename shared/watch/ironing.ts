import {
  type Contact,
  inContact,
  joined,
  lapOver,
  type OpenVisit,
  openVisit,
  staysAt,
  toldVisit,
} from '../heat/work/ironing.ts';
import type { Finding } from './finding.ts';
import type { WatchInput } from './input.ts';
import type { Work } from './work.ts';

/** The slice of where the heat goes: visits, from what was marked and what the plate was meanwhile. */
export interface Ironing {
  /** The visits of this watch are counted. */
  readonly visits: number;
  /** The visit that goes on; null while the iron is not on the work. */
  readonly visit: OpenVisit | null;
  /** The lap over the side that is up, since the last one was done; null where no side is. */
  readonly lap: OpenVisit | null;
  /** What was open before each mark that can be taken back: goes along with `Work.back`. */
  readonly back: readonly Open[];
}

type Open = Pick<Ironing, 'visit' | 'lap'>;

export const noIroning: Ironing = { visits: 0, visit: null, lap: null, back: [] };

/** Where it was before a break of the program: nobody has said since that it is still there. */
export const unconfirmed = (at: Work['at']): Work['at'] =>
  at === null || at.area === null ? at : { ...at, presumed: true };

/** As it goes on after a break of the program, at `tMs`, where the last word was: a new visit there, and a new lap. */
export function ironingFrom({ place, at }: Pick<Work, 'place' | 'at'>, tMs: number): Ironing {
  const lap = at === null ? null : openVisit(1, wholeSide(at), tMs);
  const visits = lap === null ? 0 : 1;
  if (place !== 'on-work') return { ...noIroning, visits, lap };
  return { ...noIroning, visits: visits + 1, visit: openVisit(visits + 1, at, tMs), lap };
}

/** A visit that goes on is told again after so long, ms: what a break of the program can lose of it. */
const TOLD_MS = 10_000;

export interface IroningFacts extends Contact {
  /** What the user had said before this input, and after it. */
  readonly before: Work;
  readonly work: Work;
}

export interface IroningStep {
  readonly ironing: Ironing;
  readonly found: readonly Finding[];
}

/** Folds one input into the slice. */
export function stepIroning(before: Ironing, input: WatchInput, facts: IroningFacts): IroningStep {
  const followed = followOpen(before, facts);
  if (facts.work.back === facts.before.back) return told(followed, facts.tMs, input.kind === 'stop');
  if (input.kind === 'mark' && input.mark.kind === 'undo') return takeBack(followed, facts);
  const lapDone = input.kind === 'mark' && input.mark.kind === 'lap-done';
  const moved = lapDone ? endLap(followed, facts) : moveOn(followed, facts);
  const open = {
    visit:
      moved.ironing.visit?.n === followed.visit?.n ? followed.visit : ended(followed.visit, facts, lapDone),
    lap: lapDone ? overOf(followed.lap, facts) : followed.lap,
  };
  const back = [...before.back, open].slice(-facts.work.back.length);
  return { ...moved, ironing: { ...moved.ironing, back } };
}

/** A lap lasts until it is said to be done: what is told of it later comes after that. */
const overOf = (lap: OpenVisit | null, { stages, stage, tMs }: IroningFacts): OpenVisit | null =>
  lap === null ? null : { ...lapOver(lap, stages, stage), lastMs: tMs };

/** A visit that the next mark ended was told with it; one that became a lap was not. */
const ended = (visit: OpenVisit | null, { tMs }: IroningFacts, lapDone: boolean): OpenVisit | null =>
  visit === null || visit.contactMs === 0 || lapDone ? visit : { ...visit, toldMs: tMs };

const none: readonly Finding[] = [];

function followOpen(before: Ironing, { before: { place }, ...contact }: IroningFacts): Ironing {
  const { visit, lap } = before;
  if (visit === null || place !== 'on-work') return before;
  return {
    ...before,
    visit: inContact(visit, contact),
    lap: lap === null ? null : inContact({ ...lap, lastMs: visit.lastMs }, contact),
  };
}

/** Nothing new was marked: a visit that has gone on for long, or whose session ends, is told as far as it has come. */
function told(ironing: Ironing, tMs: number, ends: boolean): IroningStep {
  const { visit } = ironing;
  if (visit === null || visit.contactMs === 0) return { ironing, found: none };
  if (!ends && tMs - (visit.toldMs ?? visit.fromMs) < TOLD_MS) return { ironing, found: none };
  return {
    ironing: { ...ironing, visit: { ...visit, toldMs: tMs } },
    found: [{ kind: 'visit', visit: toldVisit(visit) }],
  };
}

const closing = (visit: OpenVisit | null): readonly Finding[] =>
  visit === null || visit.contactMs === 0 ? none : [{ kind: 'visit', visit: toldVisit(visit) }];

/** The iron is somewhere else, or off the work. */
function moveOn(ironing: Ironing, { before, work, tMs }: IroningFacts): IroningStep {
  const lap = lapAfter(ironing, before, work, tMs);
  const touches = work.place === 'on-work';
  const { visit } = ironing;
  // Said once more: what was presumed is confirmed.
  if (touches && visit !== null && staysAt(visit, work.at))
    return { ironing: { ...ironing, ...lap, visit: { ...visit, at: work.at } }, found: none };
  const visits = lap.visits + (touches ? 1 : 0);
  return {
    ironing: { ...ironing, ...lap, visits, visit: touches ? openVisit(visits, work.at, tMs) : null },
    found: closing(visit),
  };
}

/** A lap belongs to a side: turning the piece over, or taking up another, begins a new one. */
function lapAfter(
  { lap, visits }: Ironing,
  before: Work,
  { at }: Work,
  tMs: number,
): Pick<Ironing, 'lap' | 'visits'> {
  const same = at?.piece === before.at?.piece && at?.side === before.at?.side;
  if (same && (lap !== null || at === null)) return { lap, visits };
  if (at === null) return { lap: null, visits };
  return { lap: openVisit(visits + 1, wholeSide(at), tMs), visits: visits + 1 };
}

const wholeSide = (at: NonNullable<Work['at']>): NonNullable<Work['at']> => ({
  ...at,
  area: null,
  areaName: null,
  bonded: false,
  limitMs: null,
  presumed: false,
});

/** A visit to the side as a whole was the lap itself; areas that were marked stand beside it. */
function endLap(ironing: Ironing, facts: IroningFacts): IroningStep {
  const { work, tMs } = facts;
  const { visit, lap } = ironing;
  const n = ironing.visits + 1;
  const next = work.at === null ? null : openVisit(n, wholeSide(work.at), tMs);
  const whole = visit !== null && visit.at?.area === null;
  const visits = n + (whole ? 1 : 0);
  return {
    ironing: { ...ironing, visits, lap: next, visit: whole ? openVisit(visits, work.at, tMs) : visit },
    found: [...closing(overOf(lap, facts)), ...(whole ? takenBack(visit) : none)],
  };
}

/** Of a visit that was told already it has to be said that it counts for nothing. */
const takenBack = (visit: OpenVisit | null): readonly Finding[] =>
  visit === null || visit.toldMs === null ? none : [{ kind: 'visit', visit: toldVisit(visit, true) }];

/** The last mark was a mistake: what the iron did since goes on what was open before it. */
function takeBack(ironing: Ironing, { work, tMs }: IroningFacts): IroningStep {
  const was = ironing.back.at(-1) ?? { visit: null, lap: null };
  const { visit, lap } = ironing;
  const same = was.visit?.n === visit?.n;
  const visitNow = same ? visit : reopened(was.visit, visit, tMs);
  const undone = was.lap?.lapDone === true && was.lap.contactMs > 0;
  // Where it did not touch the work before, what it seemed to do there since was none of the lap either.
  const lapNow =
    was.visit === null ? lapAgain(was.lap, null) : was.lap?.n === lap?.n ? lap : lapAgain(was.lap, lap);
  return {
    ironing: {
      visits: ironing.visits,
      visit: visitNow === null ? null : { ...visitNow, at: work.at },
      lap: lapNow,
      back: ironing.back.slice(0, -1),
    },
    found: [
      ...(same ? none : takenBack(visit)),
      ...(was.lap !== null && undone
        ? [{ kind: 'visit' as const, visit: toldVisit({ ...was.lap, lastMs: tMs }, true) }]
        : none),
    ],
  };
}

/** Of a visit that comes to an end before it has begun nothing is left. */
function reopened(was: OpenVisit | null, since: OpenVisit | null, tMs: number): OpenVisit | null {
  if (was === null) return null;
  return since === null ? { ...was, lastMs: tMs } : joined(was, since);
}

function lapAgain(was: OpenVisit | null, since: OpenVisit | null): OpenVisit | null {
  if (was === null) return null;
  const lap = since === null ? was : joined(was, since);
  return { ...lap, lapDone: false };
}
