const form = new Intl.DateTimeFormat([], {
  year: 'numeric',
  month: 'short',
  day: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
  hourCycle: 'h23',
});

/** A day and time of day in this browser's zone. */
export const dayAndTime = (utc: string): string => form.format(Date.parse(utc));

const date = new Intl.DateTimeFormat([], { year: 'numeric', month: 'short', day: 'numeric' });

/** A day in this browser's zone. */
export const day = (utcMs: number): string => date.format(utcMs);

const two = (value: number): string => String(value).padStart(2, '0');

/** A day in this browser's zone as ISO 8601 writes it, so that days can be compared. */
export function isoDay(utcMs: number): string {
  const at = new Date(utcMs);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** A day of the calendar, whatever the zone; `iso` as ISO 8601 writes it. */
export function calendarDay(iso: string): string {
  const [year, month, dayOfMonth] = iso.split('-').map(Number);
  return date.format(new Date(year ?? 0, (month ?? 1) - 1, dayOfMonth ?? 1));
}
