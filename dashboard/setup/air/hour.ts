/** Times of day by this browser's zone, to the minute. */

const clock = new Intl.DateTimeFormat([], { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

/** A time of day, for example "14:30". */
export const hourText = (utcMs: number): string => clock.format(utcMs);

/** The last full hour. */
export const hourStart = (utcMs: number): number => new Date(utcMs).setMinutes(0, 0, 0);

/** An hour as it is typed, "14" or "14:30", as minutes of the day; null: it is none. */
export function readHour(text: string): number | null {
  const [, hour, minute = '0'] = /^(\d{1,2})(?:[:.](\d{2}))?$/.exec(text.trim()) ?? [];
  if (hour === undefined || Number(hour) > 23 || Number(minute) > 59) return null;
  return Number(hour) * 60 + Number(minute);
}

/** The first moment from `fromMs` on at which clocks show so many minutes of the day. */
export function nextMoment(minutes: number, fromMs: number): number {
  const at = new Date(fromMs);
  at.setHours(Math.floor(minutes / 60), minutes % 60, 0, 0);
  if (at.getTime() < fromMs) at.setDate(at.getDate() + 1);
  return at.getTime();
}
