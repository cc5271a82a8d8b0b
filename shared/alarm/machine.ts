import type { AlarmChange, AlarmKey, AlarmRecord, AlarmState } from './record.ts';

/**
 * The alarm state machine of IEC 62682 / ISA-18.2, with on-delay, off-delay and re-alarm as in OPC 10000-9 B.1.5.
 * Pure: time comes in as an argument.
 */
export interface AlarmTiming {
  /** The condition must hold this long without a break before the alarm is raised, ms. */
  readonly onDelayMs: number;
  /** The condition must be gone this long without a break before the alarm returns, ms. */
  readonly offDelayMs: number;
  /** An acknowledged alarm that still stands is presented again after this, ms; null: never. */
  readonly reAlarmMs: number | null;
  /** It can be silenced for this long at most, ms. */
  readonly longestSilenceMs: number;
}

/**
 * What is seen of the condition. `in-deadband`: back from beyond its limit, but by less than the deadband.
 * `unknown`: there is no valid reading to tell by; it raises nothing and clears nothing.
 */
export type Condition = 'beyond' | 'in-deadband' | 'inside' | 'unknown';

export interface AlarmStep {
  readonly alarm: AlarmRecord;
  readonly change: AlarmChange | null;
}

export const normalAlarm = (key: AlarmKey): AlarmRecord => ({
  kind: key.kind,
  probe: key.probe,
  state: 'normal',
  raisedAtMs: null,
  pendingSinceMs: null,
  acknowledgedAtMs: null,
  reAlarmAtMs: null,
  silencedUntilMs: null,
  reAlarms: 0,
  peakC: null,
  detail: '',
});

const isActive = (state: AlarmState): boolean => state === 'unacknowledged' || state === 'acknowledged';

/** Takes in what is seen of the condition at `tMs`; also ends a silence and presents again what is due. */
export function observeCondition(
  alarm: AlarmRecord,
  condition: Condition,
  timing: AlarmTiming,
  tMs: number,
): AlarmStep {
  return isActive(alarm.state)
    ? whileActive(alarm, condition, timing, tMs)
    : whileInactive(alarm, condition, timing, tMs);
}

function whileInactive(
  alarm: AlarmRecord,
  condition: Condition,
  timing: AlarmTiming,
  tMs: number,
): AlarmStep {
  if (condition === 'unknown') return endSilence(alarm, tMs);
  if (condition !== 'beyond') return endSilence(withPending(alarm, null), tMs);
  const sinceMs = alarm.pendingSinceMs ?? tMs;
  if (tMs - sinceMs < timing.onDelayMs) return endSilence(withPending(alarm, sinceMs), tMs);
  const raised: AlarmRecord = {
    ...normalAlarm(alarm),
    state: 'unacknowledged',
    raisedAtMs: tMs,
    peakC: alarm.peakC,
    detail: alarm.detail,
  };
  return { alarm: raised, change: 'raised' };
}

function whileActive(alarm: AlarmRecord, condition: Condition, timing: AlarmTiming, tMs: number): AlarmStep {
  if (condition === 'inside') {
    const sinceMs = alarm.pendingSinceMs ?? tMs;
    if (tMs - sinceMs >= timing.offDelayMs) return { alarm: cleared(alarm), change: 'cleared' };
    return endSilence(withPending(alarm, sinceMs), tMs);
  }
  const still = withPending(alarm, null);
  if (still.reAlarmAtMs === null || tMs < still.reAlarmAtMs) return endSilence(still, tMs);
  return {
    alarm: {
      ...still,
      state: 'unacknowledged',
      acknowledgedAtMs: null,
      reAlarmAtMs: null,
      silencedUntilMs: null,
      reAlarms: still.reAlarms + 1,
    },
    change: 're-alarmed',
  };
}

function cleared(alarm: AlarmRecord): AlarmRecord {
  const state = alarm.state === 'acknowledged' ? 'normal' : 'returned-unacknowledged';
  return { ...alarm, state, pendingSinceMs: null, reAlarmAtMs: null, silencedUntilMs: null };
}

const withPending = (alarm: AlarmRecord, sinceMs: number | null): AlarmRecord =>
  alarm.pendingSinceMs === sinceMs ? alarm : { ...alarm, pendingSinceMs: sinceMs };

function endSilence(alarm: AlarmRecord, tMs: number): AlarmStep {
  if (alarm.silencedUntilMs === null || tMs < alarm.silencedUntilMs) return { alarm, change: null };
  return { alarm: { ...alarm, silencedUntilMs: null }, change: 'silence-ended' };
}

/** Acknowledges; null where there is nothing to acknowledge. */
export function acknowledge(alarm: AlarmRecord, timing: AlarmTiming, tMs: number): AlarmStep | null {
  switch (alarm.state) {
    case 'unacknowledged': {
      const reAlarmAtMs = timing.reAlarmMs === null ? null : tMs + timing.reAlarmMs;
      const seen = { acknowledgedAtMs: tMs, reAlarmAtMs, silencedUntilMs: null };
      return { alarm: { ...alarm, ...seen, state: 'acknowledged' }, change: 'acknowledged' };
    }
    case 'returned-unacknowledged':
      return { alarm: { ...alarm, state: 'normal', acknowledgedAtMs: tMs }, change: 'acknowledged' };
    case 'normal':
    case 'acknowledged':
      return null;
  }
}

export const isSounding = ({ state, silencedUntilMs }: AlarmRecord): boolean =>
  state === 'unacknowledged' && silencedUntilMs === null;

/**
 * Silences for `forMs`, but no longer than its kind allows; null where there is nothing to silence. One that is silent
 * already stays as it is: asking again must not keep an alarm quiet for longer.
 */
export function silence(
  alarm: AlarmRecord,
  forMs: number,
  timing: AlarmTiming,
  tMs: number,
): AlarmStep | null {
  if (alarm.state !== 'unacknowledged') return null;
  if (!isSounding(alarm)) return { alarm, change: null };
  const askedMs = Number.isFinite(forMs) ? Math.max(0, forMs) : timing.longestSilenceMs;
  const silencedUntilMs = tMs + Math.min(askedMs, timing.longestSilenceMs);
  return { alarm: { ...alarm, silencedUntilMs }, change: 'silenced' };
}

const notAfter = (ms: number | null, latestMs: number): number | null =>
  ms === null ? null : Math.min(ms, latestMs);

/**
 * An alarm taken over from another run of the program: it sounds again, and none of its times lies further ahead than
 * this run's clock allows (a machine without a clock of its own may have come up in the past).
 */
export function carriedOver(alarm: AlarmRecord, timing: AlarmTiming, tMs: number): AlarmRecord {
  return {
    ...alarm,
    raisedAtMs: notAfter(alarm.raisedAtMs, tMs),
    acknowledgedAtMs: notAfter(alarm.acknowledgedAtMs, tMs),
    reAlarmAtMs: notAfter(alarm.reAlarmAtMs, tMs + (timing.reAlarmMs ?? 0)),
    pendingSinceMs: null,
    silencedUntilMs: null,
  };
}
