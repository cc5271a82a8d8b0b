/** Times of day, with their day only where that is another than now's. */

const DAY = 24 * 60 * 60_000;

/** How a moment is worded beside another one: with its day only where that is another. */
export type ClockWording = (utcMs: number, nowMs: number) => string;

/**
 * Moments in a zone, for example "14:05", "Thu 14:05", "12 Mar".
 * @param timeZone an IANA name; left out: the browser's own
 */
export function clockWording(timeZone?: string): ClockWording {
  const made = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
    new Intl.DateTimeFormat([], {
      ...options,
      hourCycle: 'h23',
      ...(timeZone === undefined ? {} : { timeZone }),
    });
  const time = made({ hour: '2-digit', minute: '2-digit' });
  const weekday = made({ weekday: 'short' });
  const day = made({ day: 'numeric', month: 'short' });
  const date = made({ dateStyle: 'short' });
  return (utcMs, nowMs) => {
    if (date.format(utcMs) === date.format(nowMs)) return time.format(utcMs);
    return Math.abs(utcMs - nowMs) < 6 * DAY
      ? `${weekday.format(utcMs)} ${time.format(utcMs)}`
      : day.format(utcMs);
  };
}

/** In this browser's zone. */
export const clockTime = clockWording();
