import type { AlarmLive } from '../../shared/messages/live.ts';
import type { AlarmPattern, PatternName } from './patterns.ts';

/** What should sound now, from the alarms and the time. Touches nothing. */

export interface Situation {
  readonly alarms: readonly AlarmLive[];
  /** Now, by the daemon's clock, ms since 1970; null while that isn't known. */
  readonly utcMs: number | null;
  /** How long the daemon has been lost, ms; null while it is heard, and before it ever was. */
  readonly lostForMs: number | null;
  /** Whether any plate was hot as far as was last heard. */
  readonly hot: boolean;
  /** Whether the user wants quiet until the daemon is back. */
  readonly quieted: boolean;
  /** Whether a tick is wanted and its plate is in stage by a live reading. */
  readonly ticks: boolean;
}

export interface SoundPlan {
  /** Repeated for as long as the plan stays; null: silence. */
  readonly pattern: PatternName | null;
  /** What it sounds for, in order. */
  readonly causes: readonly string[];
}

/** A lost daemon is a page that can't warn; but one that is only started again is back within this time, ms. */
export const LOST_SOUNDS_AFTER_MS = 5000;

const patternOf: Readonly<Record<AlarmLive['priority'], AlarmPattern>> = {
  3: 'act-now',
  2: 'act-soon',
  1: 'know',
};

const silence: SoundPlan = { pattern: null, causes: [] };

/**
 * The most urgent of what is to be heard: alarms that are neither acknowledged nor silenced, then a lost daemon with
 * something hot, then the tick. While the daemon is lost, what sounded as last heard sounds on.
 */
export function soundPlan(now: Situation): SoundPlan {
  const lost = now.lostForMs !== null;
  if (lost && now.quieted) return silence;
  const sounding = now.alarms.filter((alarm) => sounds(alarm, now.utcMs));
  const watchLost = lost && now.hot && (now.lostForMs ?? 0) >= LOST_SOUNDS_AFTER_MS;
  const priority = Math.max(0, watchLost ? 2 : 0, ...sounding.map((alarm) => alarm.priority));
  if (priority === 0) return now.ticks && !lost ? { pattern: 'tick', causes: [] } : silence;
  const urgent = sounding.filter((alarm) => alarm.priority === priority);
  const causes = urgent.map(({ iron, kind, probe, since }) => `${iron} ${kind} ${probe ?? ''} ${since}`);
  const pattern = patternOf[priority as AlarmLive['priority']];
  return { pattern, causes: (watchLost && priority === 2 ? [...causes, 'lost'] : causes).toSorted() };
}

/** As the daemon's own buzzer does: what is gone, seen or silenced is quiet. */
const sounds = ({ state, silencedUntil }: AlarmLive, utcMs: number | null): boolean =>
  state === 'unacknowledged' &&
  (silencedUntil === null || (utcMs !== null && utcMs >= Date.parse(silencedUntil)));

/** Whether the sound has to begin anew: for something new it must not wait for the next repetition. */
export const beginsAnew = (before: SoundPlan, after: SoundPlan): boolean =>
  before.pattern !== after.pattern || after.causes.some((cause) => !before.causes.includes(cause));
