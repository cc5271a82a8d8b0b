/** Whether an alarm could be heard on a page while a plate is hot. Pure: time comes in. */
export interface Hearing {
  readonly armedPages: number;
  /** Since when something has been hot with no page armed, ms; null where that isn't so. */
  readonly sinceMs: number | null;
  readonly unheard: boolean;
}

/**
 * It is said after so long, ms: a page that is loaded again, or comes back after its daemon began anew, needs a moment,
 * and so does the first reading of a probe, before which its plate counts as hot.
 */
export const UNHEARD_AFTER_MS = 3000;

export const nobodyYet: Hearing = { armedPages: 0, sinceMs: null, unheard: false };

export interface Seen {
  readonly armedPages: number;
  /** Whether any plate is hot, or may be. */
  readonly hot: boolean;
}

export function hearingAfter(before: Hearing, { armedPages, hot }: Seen, nowMs: number): Hearing {
  if (!hot || armedPages > 0) return { armedPages, sinceMs: null, unheard: false };
  const sinceMs = before.sinceMs ?? nowMs;
  return { armedPages, sinceMs, unheard: nowMs - sinceMs >= UNHEARD_AFTER_MS };
}
