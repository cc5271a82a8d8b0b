import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beginsAnew,
  LOST_SOUNDS_AFTER_MS,
  type Situation,
  soundPlan,
} from '../../../../dashboard/sound/plan.ts';
import { alarmStates } from '../../../../shared/alarm/record.ts';
import { alarm } from '../../../fixtures/scenes.ts';

const NOW = Date.parse('2026-03-04T13:20:00Z');
const at = (offsetMs: number): string => new Date(NOW + offsetMs).toISOString();

const now = (over: Partial<Situation> = {}): Situation => ({
  alarms: [],
  utcMs: NOW,
  lostForMs: null,
  hot: true,
  quieted: false,
  ticks: false,
  ...over,
});
const plan = (over: Partial<Situation>) => soundPlan(now(over));
const patternOf = (over: Partial<Situation>) => plan(over).pattern;

const actNow = alarm();
const actSoon = alarm({ kind: 'heading-for-limit', priority: 2 });
const know = alarm({ kind: 'above-band', priority: 1 });

describe('what sounds', () => {
  it('is nothing without an alarm', () => {
    expect(soundPlan(now())).toEqual({ pattern: null, causes: [] });
  });

  it.each([
    [3, 'act-now'],
    [2, 'act-soon'],
    [1, 'know'],
  ] as const)('of priority %i is %s', (priority, pattern) => {
    expect(patternOf({ alarms: [alarm({ priority })] })).toBe(pattern);
  });

  it('is the most urgent of several, wherever it stands among them', () => {
    for (const alarms of [
      [know, actNow, actSoon],
      [actNow, know],
      [actSoon, actNow],
    ])
      expect(patternOf({ alarms })).toBe('act-now');
    expect(patternOf({ alarms: [{ ...actNow, state: 'acknowledged' }, actSoon, know] })).toBe('act-soon');
  });

  it.each(['acknowledged', 'returned-unacknowledged', 'normal'] as const)('is nothing once %s', (state) => {
    expect(patternOf({ alarms: [{ ...actNow, state }] })).toBeNull();
  });

  it('is nothing while silenced, and goes on when the silence ends', () => {
    const silenced = [{ ...actNow, silencedUntil: at(60_000) }];
    expect(patternOf({ alarms: silenced })).toBeNull();
    expect(patternOf({ alarms: silenced, utcMs: NOW + 59_999 })).toBeNull();
    expect(patternOf({ alarms: silenced, utcMs: NOW + 60_000 })).toBe('act-now');
    expect(patternOf({ alarms: [...silenced, know] })).toBe('know');
  });

  it('never is less urgent for one alarm more, and sounds only for what is unseen and not silenced', () => {
    const anyAlarm = fc.record({
      priority: fc.constantFrom(1, 2, 3),
      state: fc.constantFrom(...alarmStates),
      untilMs: fc.option(fc.integer({ min: -1000, max: 1000 })),
    });
    fc.assert(
      fc.property(fc.array(anyAlarm, { maxLength: 6 }), (drawn) => {
        const alarms = drawn.map(({ priority, state, untilMs }) =>
          alarm({ priority, state, silencedUntil: untilMs === null ? null : at(untilMs) }),
        );
        const heard = drawn.filter((a) => a.state === 'unacknowledged' && (a.untilMs ?? 0) <= 0);
        const most = Math.max(0, ...heard.map((a) => a.priority));
        expect(patternOf({ alarms })).toBe([null, 'know', 'act-soon', 'act-now'][most]);
      }),
    );
  });
});

describe('with the daemon lost', () => {
  const lost = { lostForMs: LOST_SOUNDS_AFTER_MS };

  it('a page with something hot sounds, once the daemon has had time to come back', () => {
    expect(patternOf({ lostForMs: LOST_SOUNDS_AFTER_MS - 1 })).toBeNull();
    expect(soundPlan(now(lost))).toEqual({ pattern: 'act-soon', causes: ['lost'] });
    expect(patternOf({ ...lost, hot: false })).toBeNull();
  });

  it('what sounded as last heard sounds on, from the first moment', () => {
    expect(patternOf({ lostForMs: 0, alarms: [actNow] })).toBe('act-now');
    expect(patternOf({ ...lost, alarms: [actNow] })).toBe('act-now');
  });

  it('all is quiet where the user wants it, until the daemon is back', () => {
    expect(patternOf({ ...lost, alarms: [actNow], quieted: true })).toBeNull();
    expect(patternOf({ alarms: [actNow], quieted: true })).toBe('act-now');
  });
});

describe('the tick', () => {
  it('is there only while the plate is in stage by a live reading, and under every alarm', () => {
    expect(patternOf({ ticks: true })).toBe('tick');
    expect(patternOf({ ticks: true, alarms: [know] })).toBe('know');
    expect(patternOf({ ticks: true, lostForMs: 0 })).toBeNull();
    expect(patternOf({ ticks: true, alarms: [{ ...actNow, state: 'acknowledged' }] })).toBe('tick');
  });
});

describe('the beginning of a sound', () => {
  const other = { ...know, probe: 'bench-board/2' };

  it('is not waited for: a new alarm of the same urgency begins it anew', () => {
    expect(beginsAnew(plan({ alarms: [know] }), plan({ alarms: [know, other] }))).toBe(true);
    expect(beginsAnew(plan({ alarms: [know] }), plan({ alarms: [{ ...know, since: at(5000) }] }))).toBe(true);
    expect(beginsAnew(plan({}), plan({ alarms: [know] }))).toBe(true);
    expect(beginsAnew(plan({ alarms: [actNow, know] }), plan({ alarms: [know] }))).toBe(true);
  });

  it('is not made by time, by another order, or by one alarm less', () => {
    const both = plan({ alarms: [know, other] });
    expect(beginsAnew(both, plan({ alarms: [know, other], utcMs: NOW + 60_000 }))).toBe(false);
    expect(beginsAnew(both, plan({ alarms: [other, know] }))).toBe(false);
    expect(beginsAnew(both, plan({ alarms: [other] }))).toBe(false);
    expect(beginsAnew(plan({}), plan({}))).toBe(false);
  });
});
