import { describe, expect, test } from 'vitest';
import {
  type AlarmStep,
  type AlarmTiming,
  acknowledge,
  type Condition,
  carriedOver,
  isSounding,
  normalAlarm,
  observeCondition,
  silence,
} from '../../../shared/alarm/machine.ts';
import { type AlarmRecord, type AlarmState, alarmStates } from '../../../shared/alarm/record.ts';

/** States and transitions as in IEC 62682 / ISA-18.2 (recalled; the text of the standards was not at hand). */

const timing: AlarmTiming = {
  onDelayMs: 500,
  offDelayMs: 2000,
  reAlarmMs: 120_000,
  longestSilenceMs: 60_000,
};
const key = { kind: 'over-limit', probe: 'board/1' } as const;

const seen = (alarm: AlarmRecord, condition: Condition, tMs: number): AlarmRecord =>
  observeCondition(alarm, condition, timing, tMs).alarm;

const acked = (alarm: AlarmRecord, tMs: number): AlarmRecord => {
  const step = acknowledge(alarm, timing, tMs);
  if (step === null) throw new Error('nothing to acknowledge');
  return step.alarm;
};

/** An alarm in each state, reached as it is reached in life, at 10 s. */
const unacknowledged = seen(seen(normalAlarm(key), 'beyond', 9500), 'beyond', 10_000);
const inState: Record<AlarmState, AlarmRecord> = {
  normal: normalAlarm(key),
  unacknowledged,
  acknowledged: acked(unacknowledged, 10_000),
  'returned-unacknowledged': seen(seen(unacknowledged, 'inside', 10_000), 'inside', 12_000),
};

type Event = Condition | 'acknowledge' | 'silence' | 're-alarm due';
const held = (from: AlarmRecord, condition: Condition): AlarmStep => {
  const begun = observeCondition(from, condition, timing, 20_000);
  return observeCondition(begun.alarm, condition, timing, 23_000);
};
const events: Record<Event, (from: AlarmRecord) => AlarmStep | null> = {
  beyond: (from) => held(from, 'beyond'),
  'in-deadband': (from) => held(from, 'in-deadband'),
  inside: (from) => held(from, 'inside'),
  unknown: (from) => held(from, 'unknown'),
  acknowledge: (from) => acknowledge(from, timing, 20_000),
  silence: (from) => silence(from, 30_000, timing, 20_000),
  're-alarm due': (from) => observeCondition(from, 'in-deadband', timing, 130_000),
};

/** What each event does in each state: the change and the state after it; null: it is not possible there. */
const same = (state: AlarmState) => [null, state] as const;
const table: Record<AlarmState, Record<Event, readonly [string | null, AlarmState] | null>> = {
  normal: {
    beyond: ['raised', 'unacknowledged'],
    'in-deadband': same('normal'),
    inside: same('normal'),
    unknown: same('normal'),
    acknowledge: null,
    silence: null,
    're-alarm due': same('normal'),
  },
  unacknowledged: {
    beyond: same('unacknowledged'),
    'in-deadband': same('unacknowledged'),
    inside: ['cleared', 'returned-unacknowledged'],
    unknown: same('unacknowledged'),
    acknowledge: ['acknowledged', 'acknowledged'],
    silence: ['silenced', 'unacknowledged'],
    're-alarm due': same('unacknowledged'),
  },
  acknowledged: {
    beyond: same('acknowledged'),
    'in-deadband': same('acknowledged'),
    inside: ['cleared', 'normal'],
    unknown: same('acknowledged'),
    acknowledge: null,
    silence: null,
    're-alarm due': ['re-alarmed', 'unacknowledged'],
  },
  'returned-unacknowledged': {
    beyond: ['raised', 'unacknowledged'],
    'in-deadband': same('returned-unacknowledged'),
    inside: same('returned-unacknowledged'),
    unknown: same('returned-unacknowledged'),
    acknowledge: ['acknowledged', 'normal'],
    silence: null,
    're-alarm due': same('returned-unacknowledged'),
  },
};

describe('every state and every event', () => {
  const all = alarmStates.flatMap((state) =>
    Object.entries(events).map(([event, happen]) => ({ state, event: event as Event, happen })),
  );

  test('the states are reached as they are in life', () => {
    for (const state of alarmStates) expect(inState[state].state).toBe(state);
  });

  test.each(all)('$state, $event', ({ state, event, happen }) => {
    const expected = table[state][event];
    const step = happen(inState[state]);
    expect(step === null ? null : [step.change, step.alarm.state]).toEqual(expected);
  });
});

describe('silence', () => {
  const quiet = silence(unacknowledged, 30_000, timing, 20_000)?.alarm ?? unacknowledged;

  test('sounds again once its time is over, whatever is seen meanwhile', () => {
    expect(isSounding(unacknowledged)).toBe(true);
    expect(isSounding(quiet)).toBe(false);
    for (const condition of ['beyond', 'in-deadband', 'unknown'] as const) {
      expect(observeCondition(quiet, condition, timing, 49_999).change).toBeNull();
      const ended = observeCondition(quiet, condition, timing, 50_000);
      expect(ended.change).toBe('silence-ended');
      expect(isSounding(ended.alarm)).toBe(true);
    }
  });

  test('is never longer than its kind allows, nor a number that isn’t one', () => {
    for (const forMs of [60_001, 1e9, Infinity, Number.NaN]) {
      expect(silence(unacknowledged, forMs, timing, 20_000)?.alarm.silencedUntilMs).toBe(80_000);
    }
    expect(silence(unacknowledged, -5, timing, 20_000)?.alarm.silencedUntilMs).toBe(20_000);
  });

  test('asked for again while it is silent, it is not drawn out', () => {
    expect(silence(quiet, 60_000, timing, 45_000)).toEqual({ alarm: quiet, change: null });
  });

  test('ends with an acknowledgement and with the return, without a word', () => {
    expect(acked(quiet, 21_000).silencedUntilMs).toBeNull();
    const returned = seen(seen(quiet, 'inside', 21_000), 'inside', 23_000);
    expect([returned.state, returned.silencedUntilMs]).toEqual(['returned-unacknowledged', null]);
  });
});

describe('only a fresh ok clears', () => {
  test('a fault in the off-delay begins it anew', () => {
    let alarm = seen(unacknowledged, 'inside', 20_000);
    alarm = seen(alarm, 'unknown', 21_000);
    expect(seen(alarm, 'inside', 22_500).state).toBe('unacknowledged');
    expect(seen(seen(alarm, 'inside', 22_500), 'inside', 24_500).state).toBe('returned-unacknowledged');
  });

  test('a fault for a day clears nothing', () => {
    expect(seen(unacknowledged, 'unknown', 86_400_000).state).toBe('unacknowledged');
    expect(seen(inState.acknowledged, 'unknown', 100_000).state).toBe('acknowledged');
  });

  test('a fault in the on-delay takes nothing back', () => {
    let alarm = seen(normalAlarm(key), 'beyond', 0);
    alarm = seen(alarm, 'unknown', 400);
    expect(observeCondition(alarm, 'beyond', timing, 500).change).toBe('raised');
  });
});

describe('carried over from another run', () => {
  const old: AlarmRecord = {
    ...unacknowledged,
    state: 'acknowledged',
    raisedAtMs: 900_000,
    acknowledgedAtMs: 950_000,
    reAlarmAtMs: 1_070_000,
    silencedUntilMs: 960_000,
    pendingSinceMs: 955_000,
  };

  test('it sounds again, and its times fit the new clock', () => {
    expect(carriedOver(old, timing, 1000)).toEqual({
      ...old,
      raisedAtMs: 1000,
      acknowledgedAtMs: 1000,
      reAlarmAtMs: 121_000,
      silencedUntilMs: null,
      pendingSinceMs: null,
    });
  });

  test('times that lie in its past stay', () => {
    const past = { ...old, raisedAtMs: -5000, acknowledgedAtMs: -3000, reAlarmAtMs: 117_000 };
    expect(carriedOver(past, timing, 1000)).toMatchObject({
      raisedAtMs: -5000,
      acknowledgedAtMs: -3000,
      reAlarmAtMs: 117_000,
    });
  });
});
