import type { Coat } from './drying.ts';
import type { FireAnswer } from './entry.ts';

/** So long an answer about a coat's vapour stands at most, ms; our own choices: an iron that was switched off is cold by then. */
const STANDS_MS: Readonly<Record<FireAnswer, number>> = {
  elsewhere: 4 * 3_600_000,
  'iron-off': 3_600_000,
  stopped: 3_600_000,
};

export interface StandingAnswer {
  readonly answer: FireAnswer;
  readonly untilUtcMs: number;
}

/**
 * What was answered about a coat's vapour, while it stands: that irons are off stands until one grows hot again.
 * @param heatedUtcMs when an iron last grew hot; null: none did
 */
export function standingAnswer(
  { fire }: Pick<Coat, 'fire'>,
  heatedUtcMs: number | null,
  nowUtcMs: number,
): StandingAnswer | null {
  if (fire === null) return null;
  const { answer, atUtcMs } = fire;
  const untilUtcMs = atUtcMs + STANDS_MS[answer];
  if (nowUtcMs >= untilUtcMs) return null;
  if (answer !== 'elsewhere' && heatedUtcMs !== null && heatedUtcMs > atUtcMs) return null;
  return { answer, untilUtcMs };
}
