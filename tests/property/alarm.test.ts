import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acknowledge,
  type Condition,
  normalAlarm,
  observeCondition,
  silence,
} from '../../shared/alarm/machine.ts';
import {
  type AlarmChange,
  type AlarmRecord,
  type AlarmState,
  alarmKinds,
} from '../../shared/alarm/record.ts';
import { alarmTable } from '../../shared/alarm/table.ts';

/** Every transition that IEC 62682 / ISA-18.2 allows (recalled), and no other. */
const allowed: readonly (readonly [AlarmState, AlarmChange, AlarmState])[] = [
  ['normal', 'raised', 'unacknowledged'],
  ['unacknowledged', 'acknowledged', 'acknowledged'],
  ['unacknowledged', 'cleared', 'returned-unacknowledged'],
  ['acknowledged', 'cleared', 'normal'],
  ['acknowledged', 're-alarmed', 'unacknowledged'],
  ['returned-unacknowledged', 'acknowledged', 'normal'],
  ['returned-unacknowledged', 'raised', 'unacknowledged'],
  ['unacknowledged', 'silenced', 'unacknowledged'],
  ['unacknowledged', 'silence-ended', 'unacknowledged'],
];

type Act =
  | { readonly act: 'observe'; readonly condition: Condition; readonly waitMs: number }
  | { readonly act: 'acknowledge'; readonly waitMs: number }
  | { readonly act: 'silence'; readonly forMs: number; readonly waitMs: number };

const waitMs = fc.oneof(fc.integer({ min: 0, max: 600 }), fc.integer({ min: 0, max: 700_000 }));
const acts = fc.array(
  fc.oneof(
    {
      weight: 6,
      arbitrary: fc.record({
        act: fc.constant('observe' as const),
        condition: fc.constantFrom<Condition>('beyond', 'beyond', 'in-deadband', 'inside', 'unknown'),
        waitMs,
      }),
    },
    { weight: 1, arbitrary: fc.record({ act: fc.constant('acknowledge' as const), waitMs }) },
    { weight: 1, arbitrary: fc.record({ act: fc.constant('silence' as const), forMs: fc.double(), waitMs }) },
  ),
  { maxLength: 120 },
);
const kind = fc.constantFrom(...alarmKinds);

interface Row {
  readonly before: AlarmRecord;
  readonly after: AlarmRecord;
  readonly change: AlarmChange | null;
  readonly act: Act;
  readonly tMs: number;
}

function run(of: AlarmRecord['kind'], list: readonly Act[]): Row[] {
  const timing = alarmTable[of];
  let alarm = normalAlarm({ kind: of, probe: 'board/1' });
  let tMs = 0;
  return list.map((act) => {
    tMs += act.waitMs;
    const before = alarm;
    const step =
      act.act === 'observe'
        ? observeCondition(alarm, act.condition, timing, tMs)
        : act.act === 'acknowledge'
          ? acknowledge(alarm, timing, tMs)
          : silence(alarm, act.forMs, timing, tMs);
    alarm = step?.alarm ?? alarm;
    return { before, after: alarm, change: step?.change ?? null, act, tMs };
  });
}

const holds = (check: (rows: readonly Row[], of: AlarmRecord['kind']) => void): void => {
  fc.assert(
    fc.property(kind, acts, (of, list) => check(run(of, list), of)),
    { numRuns: 2000 },
  );
};

describe('an alarm, whatever is seen and done, at whatever times', () => {
  test('makes no transition outside the table', () => {
    const seenToHappen = new Set<string>();
    holds((rows) => {
      for (const { before, after, change } of rows) {
        if (change === null) expect(after.state).toBe(before.state);
        else {
          const made = [before.state, change, after.state];
          expect(allowed).toContainEqual(made);
          seenToHappen.add(made.join(' '));
        }
      }
    });
    // A check that never saw them happen would prove nothing.
    expect([...seenToHappen].sort()).toEqual(allowed.map((row) => row.join(' ')).sort());
  });

  test('that occurred is acknowledged, or still stands', () => {
    holds((rows) => {
      let owed = false;
      for (const { after, change } of rows) {
        if (change === 'raised' || change === 're-alarmed') owed = true;
        if (change === 'acknowledged') owed = false;
        if (owed) expect(['unacknowledged', 'returned-unacknowledged']).toContain(after.state);
        if (after.state === 'normal') expect(owed).toBe(false);
      }
    });
  });

  test('is silent for no longer than its kind allows, and 60 s at most in priority 3', () => {
    holds((rows, of) => {
      const { longestSilenceMs, priority } = alarmTable[of];
      let silencedAtMs: number | null = null;
      for (const { after, change, act, tMs } of rows) {
        if (change === 'silenced') silencedAtMs = tMs;
        if (after.silencedUntilMs === null) silencedAtMs = null;
        if (silencedAtMs === null) continue;
        expect(after.state).toBe('unacknowledged');
        expect((after.silencedUntilMs ?? 0) - silencedAtMs).toBeLessThanOrEqual(longestSilenceMs);
        if (priority === 3) expect((after.silencedUntilMs ?? 0) - silencedAtMs).toBeLessThanOrEqual(60_000);
        if (act.act === 'observe') expect(tMs).toBeLessThan(after.silencedUntilMs ?? 0);
      }
    });
  });

  test('clears only where it was seen inside, without a break, for its whole off-delay', () => {
    holds((rows, of) => {
      let insideSinceMs: number | null = null;
      for (const { change, act, tMs } of rows) {
        if (act.act !== 'observe') continue;
        insideSinceMs = act.condition === 'inside' ? (insideSinceMs ?? tMs) : null;
        if (change !== 'cleared') continue;
        expect(act.condition).toBe('inside');
        expect(tMs - (insideSinceMs ?? tMs)).toBeGreaterThanOrEqual(alarmTable[of].offDelayMs);
      }
    });
  });

  test('is raised only where it was seen beyond for its whole on-delay, nothing but faults between', () => {
    holds((rows, of) => {
      let beyondSinceMs: number | null = null;
      for (const { change, act, tMs } of rows) {
        if (act.act !== 'observe') continue;
        if (act.condition === 'beyond') beyondSinceMs ??= tMs;
        else if (act.condition !== 'unknown') beyondSinceMs = null;
        if (change === 'raised') {
          expect(act.condition).toBe('beyond');
          expect(tMs - (beyondSinceMs ?? tMs)).toBeGreaterThanOrEqual(alarmTable[of].onDelayMs);
        }
      }
    });
  });

  test('that stands acknowledged is presented again when it is due', () => {
    holds((rows, of) => {
      const { reAlarmMs } = alarmTable[of];
      for (const { before, after, change, act, tMs } of rows) {
        if (act.act !== 'observe' || before.state !== 'acknowledged') continue;
        const due = reAlarmMs !== null && tMs >= (before.acknowledgedAtMs ?? 0) + reAlarmMs;
        if (act.condition !== 'inside') expect(change === 're-alarmed').toBe(due);
        if (change === 're-alarmed') expect(after.reAlarms).toBe(before.reAlarms + 1);
      }
    });
  });

  test('survives JSON', () => {
    holds((rows) => {
      for (const { after } of rows) expect(JSON.parse(JSON.stringify(after))).toEqual(after);
    });
  });
});
