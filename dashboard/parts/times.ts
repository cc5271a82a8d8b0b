/** Times of day for the views, all by the daemon's clock. */

const clock = new Intl.DateTimeFormat([], {
  hour: '2-digit',
  minute: '2-digit',
  second: '2-digit',
  hourCycle: 'h23',
});

/** A time of day in this browser's zone, for example "14:20:05". */
export const timeOfDay = (utcMs: number): string => clock.format(utcMs);

/** The time in a UUIDv7 (RFC 9562, 5.7): its first 48 bits, ms since 1970. Null for any other id. */
export function uuidTimeMs(id: string): number | null {
  const match = /^([0-9a-f]{8})-([0-9a-f]{4})-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i.exec(id);
  return match === null ? null : Number.parseInt(`${match[1]}${match[2]}`, 16);
}
