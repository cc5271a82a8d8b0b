import { waitWords } from '../../shared/words/coats.ts';

/** Lengths of time in words, for what takes minutes to days. */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Up to so long it is said in minutes, and up to so long in hours; finer would say more than is known. */
const IN_MINUTES = 90 * MINUTE;
const IN_HOURS = 72 * HOUR;

/** A length as it is said: a plain count of one unit, or hours with minutes. */
export interface Length {
  readonly text: string;
  /** Null: hours with minutes. */
  readonly plain: { readonly count: number; readonly unit: 'min' | 'h' | 'days' } | null;
}

const roundTo = (ms: number, step: number): number => Math.round(ms / step) * step;

/** A length of time from now, rounded the more the longer it is; a minute at least. */
export function lengthOf(ms: number): Length {
  if (ms < IN_MINUTES) {
    const count = Math.max(1, Math.round(ms / MINUTE));
    return { text: waitWords.minutes(count), plain: { count, unit: 'min' } };
  }
  if (ms < IN_HOURS) {
    const rounded = roundTo(ms, ms < 6 * HOUR ? 10 * MINUTE : ms < DAY ? 30 * MINUTE : HOUR);
    const hours = Math.floor(rounded / HOUR);
    const minutes = Math.round((rounded - hours * HOUR) / MINUTE);
    return minutes === 0
      ? { text: waitWords.hours(hours), plain: { count: hours, unit: 'h' } }
      : { text: waitWords.hoursMinutes(hours, minutes), plain: null };
  }
  const count = Math.round(ms / DAY);
  return { text: waitWords.days(count), plain: { count, unit: 'days' } };
}

export const lengthText = (ms: number): string => lengthOf(ms).text;

/** How long ago something was; of less than a minute no number is said. */
export const agoText = (ms: number): string =>
  ms < MINUTE ? waitWords.justNow : waitWords.ago(lengthText(ms));
