import { describe, expect, it } from 'vitest';
import { noMistakes } from '../../../daemon/probe/simulated/worker/worker.ts';
import { normalAlarm } from '../../../shared/alarm/machine.ts';
import { USUAL_REST_LIMIT_S } from '../../../shared/heat/schedule.ts';
import { byHour, countAlarms, countText } from '../../simulated-work/count.ts';
import { foundOf, spotsIn } from '../../simulated-work/mistakes.ts';
import { onMaps } from '../../simulated-work/real-bench.ts';
import { hearPlaces, type WorkAlarm, watchWork } from '../../simulated-work/watch.ts';
import { workerOf } from '../../simulated-work/workers.ts';

/** A slice of `tests/soak/work-alarms.test.ts`: a worker's two irons through the whole fold. */
describe('an hour and a half of correct simulated work', () => {
  const worker = workerOf(2, { mistakes: noMistakes, hours: 1.5 });
  const watched = watchWork(worker, 2);
  const raised = watched.alarms.filter((a) => a.change === 'raised');

  it('raises nothing above priority 1 while an iron is in use, and at most one of that an hour', () => {
    expect(raised.filter((a) => a.priority > 1 && !a.onRest)).toEqual([]);
    expect(raised.filter((a) => a.priority === 1).length).toBeLessThanOrEqual(2);
  });

  it('went through the fold: both irons were hot, regulated, and known by their stage', () => {
    for (const state of Object.values(watched.states)) {
      expect(state.heat.is).toBe('hot');
      expect(state.tMs).toBe(1.5 * 3_600_000);
      expect(state.work.stageId).not.toBeNull();
    }
    expect(watched.highestC).toBeGreaterThan(115);
  });

  it('comes out the same again', () => {
    expect(watchWork(worker, 2).states).toEqual(watched.states);
  });
});

describe('two hours of simulated work on real maps, with rests on one spot', () => {
  const mistakes = { ...noMistakes, spotsPerHour: 6 };
  const worker = workerOf(3, { mistakes, hours: 2, motion: true });
  const watched = watchWork(worker, 3, onMaps(worker, 3));
  const spots = spotsIn(watched.plan, USUAL_REST_LIMIT_S + 1);

  it('tells each of them, and nothing else above priority 1', () => {
    const found = foundOf(watched, 'dwell', spots);
    expect(spots.length).toBeGreaterThan(3);
    expect(found).toEqual({
      raised: spots.length,
      rightly: spots.length,
      made: spots.length,
      told: spots.length,
    });
    const higher = watched.alarms.filter((a) => a.change === 'raised' && a.priority > 1);
    expect(new Set(higher.map((a) => a.alarm.kind))).toEqual(new Set(['dwell']));
  });

  it('knows the pieces: areas with their limits, edges with the cement limit', () => {
    const told = watched.states.big.work.at;
    expect(told?.pieceName).toMatch(/^left-/);
    expect(watched.states.big.settings?.schedule.cementLimitC).toBeGreaterThan(100);
    expect(watched.states.small.ironing.visits).toBeGreaterThan(10);
  });
});

describe('marks as inputs', () => {
  it('put the iron taken up on the work, and the others on their rests', () => {
    expect(hearPlaces({ atS: 1.5, iron: 'big', act: { kind: 'in-hand' } })).toEqual([
      {
        iron: 'small',
        input: { kind: 'mark', commandId: 'm1500-small', mark: { kind: 'place', place: 'on-rest' } },
      },
      {
        iron: 'big',
        input: { kind: 'mark', commandId: 'm1500-big', mark: { kind: 'place', place: 'on-work' } },
      },
    ]);
    expect(hearPlaces({ atS: 1, iron: 'big', act: { kind: 'turned' } })).toEqual([]);
  });
});

describe('counts', () => {
  const alarm = (tMs: number, change: WorkAlarm['change'] = 'raised'): WorkAlarm => ({
    iron: 'big',
    tMs,
    change,
    priority: 1,
    onRest: false,
    alarm: {
      ...normalAlarm({ kind: 'below-band', probe: null }),
      state: 'unacknowledged',
      raisedAtMs: tMs,
    },
  });

  it('are of what was raised, by kind, priority and place', () => {
    const counts = countAlarms([alarm(0), alarm(10, 'cleared'), alarm(20)], 4);
    expect(counts).toEqual([{ kind: 'below-band', priority: 1, onRest: false, raised: 2, perHour: 0.5 }]);
    expect(countText(counts)).toContain('below-band | 1 | in use | 2 | 0.500');
  });

  it('fall into the hours', () => {
    expect(byHour([alarm(0), alarm(3_599_999), alarm(3_600_000)], 3)).toEqual({
      none: 1,
      one: 1,
      more: 1,
      most: 2,
    });
  });
});
