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
