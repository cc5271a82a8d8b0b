/** A time as ISO 8601 text in UTC, with milliseconds and the offset written out: `2026-03-01T10:11:12.345+00:00`. */
export const utcText = (utcMs: number): string => new Date(utcMs).toISOString().replace('Z', '+00:00');
