/** Dates and times of a session, in the zone of the machine that recorded it. */
export interface SessionTimes {
  /** For example "Wed, 25 Nov 2026, 14:20". */
  dateTime(utcMs: number): string;
  /** With seconds. */
  time(utcMs: number): string;
  /** As exact as a scale with lines `stepMs` apart needs it. */
  onScale(utcMs: number, stepMs: number): string;
  /** Whether this browser shows another zone's times. */
  readonly otherZone: boolean;
}

const MINUTE_MS = 60_000;

/** @param zone an IANA name; one that this browser doesn't know is not used */
export function sessionTimes(zone: string): SessionTimes {
  const timeZone = known(zone);
  const made = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
    new Intl.DateTimeFormat([], { ...options, hourCycle: 'h23', ...(timeZone === null ? {} : { timeZone }) });
  const day = { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' } as const;
  const minutes = { hour: '2-digit', minute: '2-digit' } as const;
  const dateTime = made({ ...day, ...minutes });
  const time = made({ ...minutes, second: '2-digit' });
  const short = made(minutes);
  const exact = made({ ...minutes, second: '2-digit', fractionalSecondDigits: 1 });
  const own = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  return {
    dateTime: (utcMs) => dateTime.format(utcMs),
    time: (utcMs) => time.format(utcMs),
    onScale: (utcMs, stepMs) => (stepMs < 1000 ? exact : stepMs < MINUTE_MS ? time : short).format(utcMs),
    otherZone: timeZone !== null && timeZone !== own,
  };
}

function known(zone: string): string | null {
  try {
    return new Intl.DateTimeFormat([], { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    return null;
  }
}
