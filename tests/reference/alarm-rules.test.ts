import { describe, expect, test } from 'vitest';
import { overLimit } from '../../shared/alarm/conditions.ts';
import { acknowledge, normalAlarm, observeCondition } from '../../shared/alarm/machine.ts';
import type { AlarmRecord } from '../../shared/alarm/record.ts';
import type { AlarmRule } from '../../shared/alarm/table.ts';
import { alarmTable } from '../../shared/alarm/table.ts';
import { json } from './data.ts';

/**
 * The alarm rules of OPC 10000-9 (UA Part 9, v1.05.03), annex B.1.5 and 5.8.2; text seen. The figure with its time axis
 * was not, so the traces here are our own, made from the rules' words. Source: data/6_alarms.
 */

interface Published {
  readonly rules: readonly string[];
}
const { rules } = json('6_alarms/opcua_part9_b15.json') as Published;

/** The published words of the rule that begins so. */
function rule(beginning: string): string {
  const found = rules.find((r) => r.startsWith(beginning));
  if (found === undefined) throw new Error(`no published rule begins with "${beginning}"`);
  return found;
}

const LIMIT_C = 190;
const timing: AlarmRule = {
  ...alarmTable['over-limit'],
  onDelayMs: 5000,
  offDelayMs: 8000,
  deadbandK: 3,
  reAlarmMs: 60_000,
};

interface Row {
  readonly tS: number;
  readonly state: AlarmRecord['state'];
  readonly reAlarms: number;
}

/** The alarm's course over temperatures read once a second; `acknowledgedAtS` where somebody acknowledges. */
function course(valuesC: readonly number[], acknowledgedAtS: number | null = null): Row[] {
  let alarm = normalAlarm({ kind: 'over-limit', probe: 'board/1' });
  return valuesC.map((plateC, tS) => {
    const condition = overLimit({ plateC, limitC: LIMIT_C }, timing.deadbandK);
    alarm = observeCondition(alarm, condition, timing, tS * 1000).alarm;
    if (tS === acknowledgedAtS) alarm = acknowledge(alarm, timing, tS * 1000)?.alarm ?? alarm;
    return { tS, state: alarm.state, reAlarms: alarm.reAlarms };
  });
}

const seconds = (count: number, plateC: number): number[] => Array.from({ length: count }, () => plateC);
const states = (rows: readonly Row[]): string[] => rows.map((r) => r.state);

describe('OPC 10000-9, B.1.5', () => {
  test(rule('OnDelay'), () => {
    const spike = course([...seconds(5, 180), ...seconds(5, 195), ...seconds(30, 180)]);
    expect(new Set(states(spike))).toEqual(new Set(['normal']));
    const stays = course([...seconds(5, 180), ...seconds(20, 195)]);
    // Beyond from 5 s on; the whole on-delay of 5 s is over at 10 s.
    expect(stays[9]?.state).toBe('normal');
    expect(stays[10]?.state).toBe('unacknowledged');
  });

  test(rule('OffDelay'), () => {
    const raised = [...seconds(20, 195)];
    const short = course([...raised, ...seconds(8, 180), ...seconds(5, 195)]);
    expect(new Set(states(short).slice(6))).toEqual(new Set(['unacknowledged']));
    const long = course([...raised, ...seconds(20, 180)]);
    expect(long[27]?.state).toBe('unacknowledged');
    expect(long[28]?.state).toBe('returned-unacknowledged');
  });

  test(rule('Deadband'), () => {
    const raised = [...seconds(20, 195)];
    expect(states(course([...raised, ...seconds(60, LIMIT_C - 3)])).at(-1)).toBe('unacknowledged');
    expect(states(course([...raised, ...seconds(60, LIMIT_C - 3.1)])).at(-1)).toBe('returned-unacknowledged');
  });

  test(rule('Value noise'), () => {
    const noise = Array.from({ length: 200 }, (_, i) => LIMIT_C + (i % 3) - 2);
    const active = course([...seconds(20, 195), ...noise]);
    expect(new Set(states(active).slice(6))).toEqual(new Set(['unacknowledged']));
    const acknowledged = course([...seconds(20, 195), ...noise.slice(0, 30)], 15);
    expect(new Set(states(acknowledged).slice(15))).toEqual(new Set(['acknowledged']));
  });

  test(rule('ReAlarmTime'), () => {
    const rows = course(seconds(100, 195), 10);
    expect(rows[69]?.state).toBe('acknowledged');
    // Acknowledged at 10 s; 60 s later it is presented again.
    expect(rows[70]).toMatchObject({ state: 'unacknowledged', reAlarms: 1 });
  });
});

test(`OPC 10000-9, 5.8.2: ${rule('ReAlarmRepeatCount')}`, () => {
  let alarm = normalAlarm({ kind: 'over-limit', probe: 'board/1' });
  const counts: number[] = [];
  for (let tS = 0; tS < 400; tS++) {
    const step = observeCondition(alarm, 'beyond', timing, tS * 1000);
    alarm = step.alarm;
    if (step.change === 're-alarmed') counts.push(alarm.reAlarms);
    alarm = acknowledge(alarm, timing, tS * 1000)?.alarm ?? alarm;
  }
  // Raised and acknowledged at 5 s, again every 60 s: 65, 125, 185, 245, 305, 365.
  expect(counts).toEqual([1, 2, 3, 4, 5, 6]);
});

test('the data has no rule that is not checked here', () => {
  expect(rules.map((r) => r.split(/[ :]/)[0])).toEqual([
    'OnDelay',
    'OffDelay',
    'Deadband',
    'Value',
    'ReAlarmTime',
    'ReAlarmRepeatCount',
  ]);
});
