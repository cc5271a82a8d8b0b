import { ironStage } from '../../shared/cure/cement.ts';
import type { CoatAnswer, CoatStageAnswer } from '../../shared/messages/cure.ts';
import {
  benchWords,
  coatStateWords,
  coatWords,
  dryingStageWords,
  pieceCoatWords,
  rangeWhyWords,
} from '../../shared/words/coats.ts';
import type { ClockWording } from '../parts/clock-time.ts';
import { agoText } from '../parts/length.ts';
import { type Range, waitText } from './range-text.ts';

/** What is said of a coat, from what the daemon tells of it. */

/** How a coat is drawn and called: its state, unless the air lets nothing dry. */
export type CoatLook = keyof typeof coatStateWords;

export const lookOf = ({ state, stands }: Pick<CoatAnswer, 'state' | 'stands'>): CoatLook =>
  stands && state === 'drying' ? 'stands' : state;

/** Whether somebody should touch it now. */
export const isToTest = ({ state }: Pick<CoatAnswer, 'state'>): boolean =>
  state === 'may-be-ready' || state === 'due';

const ms = (utc: string | null): number | null => (utc === null ? null : Date.parse(utc));

export const rangeOf = ({ earliest, likely, latest }: CoatStageAnswer): Range => ({
  earliestMs: ms(earliest),
  likelyMs: ms(likely),
  latestMs: ms(latest),
});

/** The stage that it dries towards; null: every one was said dry. */
export const stageNow = ({ stage, stages }: CoatAnswer): CoatStageAnswer | null =>
  stages.find(({ kind }) => kind === stage) ?? null;

/** More reasons than these say less. */
const MOST_WHYS = 2;

/** Why its range is so wide; empty where no reason is told. */
export const whyText = ({ why }: Pick<CoatAnswer, 'why'>): string =>
  why.length === 0
    ? ''
    : coatWords.why(
        why
          .slice(0, MOST_WHYS)
          .map((one) => rangeWhyWords[one])
          .join(coatWords.and),
      );

/** What was put on and when. @param nowMs null while the daemon's clock isn't known */
export function putOnText({ cement, startedAt }: CoatAnswer, nowMs: number | null, at: ClockWording): string {
  const startedMs = Date.parse(startedAt);
  const ago = nowMs === null ? '' : agoText(nowMs - startedMs);
  return coatWords.putOn(cement.name, at(startedMs, nowMs ?? startedMs), ago);
}

/** What was said of a stage that is still tacky; empty where nothing was. */
export const tackyText = ({ saidTacky }: CoatStageAnswer, nowMs: number, at: ClockWording): string =>
  saidTacky === null ? '' : coatWords.saidTacky(at(Date.parse(saidTacky), nowMs));

/** How a stage stands that the coat doesn't dry towards now: it was said dry, or comes later. */
export const stageText = (stage: CoatStageAnswer, nowMs: number, at: ClockWording): string =>
  stage.saidDry === null
    ? waitText(rangeOf(stage), nowMs)
    : coatWords.saidDry(at(Date.parse(stage.saidDry), nowMs));

/** More places than these are counted. */
const MOST_NAMED = 3;

/** Places as a list that stays short. */
export function listText(places: readonly string[]): string {
  const named = places.length > MOST_NAMED + 1 ? places.slice(0, MOST_NAMED) : places;
  const rest = places.length - named.length;
  return [...named, ...(rest === 0 ? [] : [benchWords.more(rest)])].join('; ');
}

const places = (coats: readonly CoatAnswer[]): string => listText(coats.map(({ placeName }) => placeName));

/** Coats to be tested, each with the stage that it may be ready for: one that nobody has touched comes again at its next. */
export const toTestText = (ready: readonly CoatAnswer[]): string =>
  listText(
    ready.map(({ placeName, stage }) =>
      stage === null ? placeName : benchWords.toTest(placeName, dryingStageWords[stage]),
    ),
  );

/** What may be ready now and what comes next: the line at the top of the bench. */
export function headline(
  coats: readonly CoatAnswer[],
  nowMs: number,
): { readonly now: string; readonly next: string } {
  if (coats.length === 0) return { now: benchWords.none, next: '' };
  const ready = coats.filter(isToTest);
  const standing = coats.filter((coat) => lookOf(coat) === 'stands');
  const next = coats.find((coat) => lookOf(coat) === 'drying');
  const stage = next === undefined ? null : stageNow(next);
  const rest =
    next !== undefined && stage !== null
      ? benchWords.next(next.placeName, dryingStageWords[stage.kind], waitText(rangeOf(stage), nowMs))
      : standing.length > 0
        ? benchWords.stands(places(standing))
        : '';
  if (ready.length > 0) return { now: benchWords.test(toTestText(ready)), next: rest };
  const all = coats.every(({ state }) => state === 'dry');
  return { now: all ? benchWords.allDry : benchWords.testNone, next: rest };
}

const likelyOf = (coat: CoatAnswer): number | null => ms(ironStage(coat)?.likely ?? null);

/** When an iron may likely go over it, as a time of day; empty where that can't be said. */
export function ironTime(coat: CoatAnswer, nowMs: number, at: ClockWording): string {
  const likelyMs = likelyOf(coat);
  return likelyMs === null ? '' : at(likelyMs, nowMs);
}

/** A wet place in full, for those who don't see its hatching. */
export function wetText(coat: CoatAnswer, nowMs: number, at: ClockWording): string {
  const decides = ironStage(coat);
  if (decides === null) return pieceCoatWords.wetUntold;
  const stage = dryingStageWords[decides.kind];
  const time = ironTime(coat, nowMs, at);
  return time === '' ? pieceCoatWords.wetOpen(stage) : pieceCoatWords.wetFull(stage, time);
}

/** The one of two coats on a place that keeps an iron off it for longer. */
function later(one: CoatAnswer | undefined, other: CoatAnswer): CoatAnswer {
  if (one === undefined) return other;
  return (likelyOf(other) ?? Number.POSITIVE_INFINITY) > (likelyOf(one) ?? Number.POSITIVE_INFINITY)
    ? other
    : one;
}

/** The wet coat on each area of a piece, by the area's id; a coat on a whole side is on all areas of it. */
export function wetAreas(
  coats: readonly CoatAnswer[],
  {
    id,
    areas,
  }: { readonly id: string; readonly areas: readonly { readonly id: string; readonly side: number }[] },
): ReadonlyMap<string, CoatAnswer> {
  const wet = coats.filter((coat) => coat.wet && coat.piece === id);
  const found = new Map<string, CoatAnswer>();
  for (const coat of wet)
    for (const area of areas)
      if (area.side === coat.side && (coat.area === null || coat.area === area.id))
        found.set(area.id, later(found.get(area.id), coat));
  return found;
}
