import { waitWords } from '../../shared/words/coats.ts';
import type { ClockWording } from '../parts/clock-time.ts';
import { agoText, type Length, lengthOf, lengthText } from '../parts/length.ts';

/** When a coat may be ready, in words. Times are ms since 1970; null: it can't be said. */
export interface Range {
  readonly earliestMs: number | null;
  readonly likelyMs: number | null;
  readonly latestMs: number | null;
}

const MINUTE = 60_000;

/** The count alone where the unit is that of `beside`. */
const brief = (length: Length, beside: Length): string =>
  length.plain !== null && length.plain.unit === beside.plain?.unit
    ? String(length.plain.count)
    : length.text;

/** How long until a coat may be ready, for example "in 20 to 45 min, likely 30". */
export function waitText({ earliestMs, likelyMs, latestMs }: Range, nowMs: number): string {
  if (earliestMs === null) return waitWords.notInThisAir;
  if (latestMs !== null && latestMs <= nowMs) return waitWords.past(agoText(nowMs - latestMs));
  if (earliestMs <= nowMs) return openText(likelyMs, latestMs, nowMs);
  const low = lengthOf(earliestMs - nowMs);
  const likely = likelyMs === null ? null : lengthOf(likelyMs - nowMs);
  if (latestMs === null)
    return likely === null ? waitWords.from(low.text) : waitWords.fromLikely(low.text, likely.text);
  if (latestMs - nowMs < MINUTE) return waitWords.soon;
  const high = lengthOf(latestMs - nowMs);
  if (low.text === high.text) return waitWords.about(high.text);
  const lowText = brief(low, high);
  if (likely === null) return waitWords.between(lowText, high.text, high.text);
  // Behind two units a third count would belong to neither.
  return waitWords.between(lowText, high.text, lowText === low.text ? likely.text : brief(likely, high));
}

/** Its earliest time is past, its latest isn't. It is to be tested from its likely time on: "now" is not said before. */
function openText(likelyMs: number | null, latestMs: number | null, nowMs: number): string {
  if (likelyMs === null) return waitWords.unsaid;
  const high = latestMs === null ? null : lengthText(latestMs - nowMs);
  if (likelyMs <= nowMs) return high === null ? waitWords.nowOpen : waitWords.nowTo(high);
  const likely = lengthText(likelyMs - nowMs);
  return high === null ? waitWords.likelyOpen(likely) : waitWords.likely(likely, high);
}

/** The same as times of day; empty where none can be said. */
export function clockRange(
  { earliestMs, likelyMs, latestMs }: Range,
  nowMs: number,
  at: ClockWording,
): string {
  if (earliestMs === null) return '';
  const low = at(earliestMs, nowMs);
  if (latestMs === null) return waitWords.clockFrom(low);
  return waitWords.clock(low, at(latestMs, nowMs), at(likelyMs ?? latestMs, nowMs));
}
