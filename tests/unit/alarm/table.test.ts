import { describe, expect, test } from 'vitest';
import { type AlarmKind, alarmKeyText, alarmKinds } from '../../../shared/alarm/record.ts';
import { alarmTable, priorityOf } from '../../../shared/alarm/table.ts';

describe.each(alarmKinds)('%s', (kind) => {
  const rule = alarmTable[kind];

  test('says why, what happens and what to do', () => {
    for (const text of [rule.title, rule.cause, rule.consequence, rule.action]) expect(text).toMatch(/\S/);
  });

  test('has delays, a deadband and a longest silence that make sense', () => {
    for (const ms of [rule.onDelayMs, rule.offDelayMs, rule.deadbandK]) expect(ms).toBeGreaterThanOrEqual(0);
    expect(rule.longestSilenceMs).toBeGreaterThan(0);
    expect(rule.reAlarmMs ?? 1).toBeGreaterThan(0);
  });

  test('of priority 3 is silent for 60 s at most, and is presented again', () => {
    if (rule.priority < 3) return;
    expect(rule.longestSilenceMs).toBeLessThanOrEqual(60_000);
    expect(rule.reAlarmMs).not.toBeNull();
  });
});

test('over the limit, or heading for it, is less urgent on the rest; nothing else is', () => {
  const both = (kind: AlarmKind) => [priorityOf(kind, false), priorityOf(kind, true)];
  expect(both('over-limit')).toEqual([3, 2]);
  expect(both('heading-for-limit')).toEqual([2, 1]);
  for (const kind of alarmKinds.filter((k) => k !== 'over-limit' && k !== 'heading-for-limit')) {
    expect(priorityOf(kind, true)).toBe(priorityOf(kind, false));
  }
});

test('an alarm is named by its kind, and by its probe where it has one', () => {
  expect(alarmKeyText({ kind: 'over-limit', probe: 'board/1' })).toBe('over-limit:board/1');
  expect(alarmKeyText({ kind: 'not-recording', probe: null })).toBe('not-recording');
});
