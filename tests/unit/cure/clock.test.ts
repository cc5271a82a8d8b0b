import { describe, expect, test } from 'vitest';
import { instructedS } from '../../../shared/cure/cement.ts';
import type { CoatClock } from '../../../shared/cure/clock.ts';
import { learn } from '../../../shared/cure/learn.ts';
import { clockOf, exact, minutes, only, type Situation, water } from './clocked.ts';
import { example, HOUR_MS, MINUTE_MS, NOW_MS, probed } from './curing.ts';

describe('in the instructions’ own air', () => {
  test.each(['water-borne', 'solvent-borne', 'two-part', 'moisture-curing'] as const)(
    'the likely times are the instructions’ exactly: %s',
    (kind) => {
      const cement = example(kind);
      const { stages } = clockOf({ cement, points: probed(0, 8 * 1440) });
      expect(stages.map(({ likelyMs }) => minutes(likelyMs))).toEqual(
        cement.stages.map((stage) => instructedS(stage) / 60),
      );
    },
  );

  test('the range is that of the instructions and of what is not known of the cement', () => {
    const [stage] = clockOf({ cement: exact }).stages;
    // Four in five of a normal distribution with a standard deviation of 29 %, and some odd ones.
    expect(minutes(stage?.earliestMs)).toBeCloseTo(40.5, 0);
    expect(minutes(stage?.latestMs)).toBeCloseTo(89, 0);
    const [wider] = clockOf({ cement: only('ready-for-iron', 1800, 5400) }).stages;
    expect(minutes(wider?.likelyMs)).toBe(60);
    expect(minutes(wider?.earliestMs)).toBeCloseTo(20.2, 0);
  });

  test('what was learned makes it shorter and narrower', () => {
    const learned = learn(
      [1, 2, 3, 4, 5].map((day) => ({
        fromUtcMs: day * 24 * HOUR_MS,
        stages: [{ aboveS: 0.79 * 3600, belowS: 0.81 * 3600, stageS: 3600 }],
      })),
    );
    const [stage] = clockOf({ cement: exact, more: { learned } }).stages;
    expect(minutes(stage?.likelyMs)).toBeCloseTo(60 * learned.learned.factor, 0);
    expect(minutes(stage?.latestMs)).toBeLessThan(66);
    expect(minutes(stage?.earliestMs)).toBeGreaterThan(36);
  });
});

describe('how it stands', () => {
  test('drying, may be ready, due; dry by a person’s word only', () => {
    const states = [0, 59, 60, 88, 90, 10_000].map((atMin) => clockOf({ cement: exact, atMin }).state);
    expect(states).toEqual(['drying', 'drying', 'may-be-ready', 'may-be-ready', 'due', 'due']);
    const dry = clockOf({ cement: exact, atMin: 50, taps: [[50, 'ready-for-iron', 'dry']] });
    expect(dry).toMatchObject({ state: 'dry', stage: null, wet: false, why: [] });
  });

  test('towards the latest stage whose likely time is past, whatever was said of earlier ones', () => {
    const [touch, iron, overlay, cured] = water.stages.map((stage) => instructedS(stage) / 60);
    const at = (atMin = 0) => {
      const { stage, state } = clockOf({ atMin });
      return [stage, state];
    };
    expect(at()).toEqual(['set-to-touch', 'drying']);
    expect(at(touch)).toEqual(['set-to-touch', 'may-be-ready']);
    expect(at((iron ?? 0) - 1)).toEqual(['set-to-touch', 'due']);
    expect(at(iron)).toEqual(['ready-for-iron', 'may-be-ready']);
    expect(at(overlay)).toEqual(['ready-for-overlay', 'may-be-ready']);
    expect(at(cured)).toEqual(['cured', 'may-be-ready']);
    expect(at(100_000)).toEqual(['cured', 'due']);
    const said = clockOf({ atMin: iron ?? 0, taps: [[30, 'ready-for-iron', 'dry']] });
    expect([said.stage, said.state]).toEqual(['ready-for-overlay', 'drying']);
  });

  test('on towards the stage that was found tacky, and not back to an earlier one', () => {
    const taps: Situation['taps'] = [[100, 'ready-for-iron', 'tacky']];
    expect(clockOf({ atMin: 100, taps })).toMatchObject({ stage: 'ready-for-iron', state: 'drying' });
    expect(clockOf({ atMin: 160, taps })).toMatchObject({ stage: 'ready-for-iron', state: 'may-be-ready' });
  });

  test('back to the iron’s where a later one was found tacky while it counts as wet, until that is said', () => {
    const taps: Situation['taps'] = [
      [100, 'ready-for-iron', 'tacky'],
      [250, 'ready-for-overlay', 'tacky'],
    ];
    const wet = clockOf({ atMin: 250, taps });
    expect(wet).toMatchObject({ stage: 'ready-for-iron', wet: true });
    expect(wet.state).not.toBe('drying');
    const said = clockOf({ atMin: 251, taps: [...taps, [251, 'ready-for-iron', 'dry']] });
    expect(said).toMatchObject({ stage: 'ready-for-overlay', state: 'drying', wet: false });
    // Its latest time is past, and nobody has found it tacky for an iron.
    const over = clockOf({ atMin: 250, taps: taps.slice(1) });
    expect(over).toMatchObject({ stage: 'ready-for-overlay', state: 'drying', wet: false });
  });

  test('a later stage that is said dry says it of the earlier ones', () => {
    const clock = clockOf({
      atMin: 100,
      taps: [
        [20, 'set-to-touch', 'dry'],
        [90, 'ready-for-overlay', 'dry'],
      ],
    });
    expect(clock.stage).toBe('cured');
    expect(clock.stages.map(({ saidDryMs }) => minutes(saidDryMs))).toEqual([20, 90, 90, null]);
  });

  test('the later word counts: tacky again takes back what was said of that stage and later ones', () => {
    const clock = clockOf({
      atMin: 100,
      taps: [
        [90, 'ready-for-iron', 'tacky'],
        [80, 'ready-for-overlay', 'dry'],
        [20, 'set-to-touch', 'dry'],
      ],
    });
    expect(clock.stages.map(({ saidDryMs }) => minutes(saidDryMs))).toEqual([20, null, null, null]);
    expect(clock.stages.map(({ saidTackyMs }) => minutes(saidTackyMs))).toEqual([null, 90, null, null]);
    expect(clock.stage).toBe('ready-for-iron');
  });

  test('put on in the future (a clock that was set back): nothing has dried, nothing is negative', () => {
    const clock = clockOf({ atMin: -120 });
    expect(clock).toMatchObject({ state: 'drying', stage: 'set-to-touch', wet: true, stands: false });
    for (const { earliestMs } of clock.stages) expect(minutes(earliestMs)).toBeGreaterThan(0);
  });
});

describe('still tacky', () => {
  test('moves its times on, and those of later stages, but not of earlier ones', () => {
    const before = clockOf({ atMin: 120 });
    const after = clockOf({ atMin: 120, taps: [[120, 'ready-for-iron', 'tacky']] });
    const [touch, iron, overlay] = after.stages;
    expect(touch).toEqual(before.stages[0]);
    expect(minutes(iron?.earliestMs)).toBe(120);
    expect(minutes(iron?.likelyMs)).toBeGreaterThan(125);
    expect(iron?.likelyMs).toBeLessThanOrEqual(iron?.latestMs ?? 0);
    expect(overlay?.likelyMs).toBeGreaterThan(before.stages[2]?.likelyMs ?? Infinity);
    expect(clockOf({ cement: exact, atMin: 70 }).state).toBe('may-be-ready');
    expect(clockOf({ cement: exact, atMin: 70, taps: [[70, 'ready-for-iron', 'tacky']] }).state).toBe(
      'drying',
    );
  });

  test('at a time when nobody expected it to be dry it changes next to nothing', () => {
    const [before] = clockOf({ cement: exact, atMin: 10 }).stages;
    const [after] = clockOf({ cement: exact, atMin: 10, taps: [[10, 'ready-for-iron', 'tacky']] }).stages;
    expect(Math.abs((after?.likelyMs ?? 0) - (before?.likelyMs ?? 0))).toBeLessThan(MINUTE_MS);
  });
});

describe('wet for an iron', () => {
  const wet = (atMin: number, taps: Situation['taps'] = []): boolean => clockOf({ atMin, taps }).wet;

  test('until its latest time is past', () => {
    const latest = minutes(clockOf({}).stages[1]?.latestMs) ?? Number.NaN;
    expect(wet(latest - 1)).toBe(true);
    expect(wet(latest)).toBe(false);
  });

  test('until somebody says that it is ready for the iron, or for what comes later', () => {
    expect(wet(50, [[50, 'set-to-touch', 'dry']])).toBe(true);
    expect(wet(50, [[50, 'ready-for-iron', 'dry']])).toBe(false);
    expect(wet(50, [[50, 'cured', 'dry']])).toBe(false);
  });

  test('once found tacky only a word counts, however late it is', () => {
    expect(wet(5000, [[200, 'ready-for-iron', 'tacky']])).toBe(true);
    expect(wet(5000, [[200, 'set-to-touch', 'tacky']])).toBe(true);
    expect(wet(5000, [[200, 'cured', 'tacky']])).toBe(false);
    expect(
      wet(5000, [
        [200, 'set-to-touch', 'tacky'],
        [230, 'set-to-touch', 'dry'],
      ]),
    ).toBe(false);
    expect(
      wet(300, [
        [200, 'ready-for-iron', 'tacky'],
        [260, 'ready-for-iron', 'dry'],
      ]),
    ).toBe(false);
  });

  test('a cement that names no stage for the iron: by the next later one, else by a word at its last', () => {
    const overlay = only('ready-for-overlay', 3600, 3600);
    expect(clockOf({ cement: overlay, atMin: 60 }).wet).toBe(true);
    expect(clockOf({ cement: overlay, atMin: 60, taps: [[60, 'ready-for-overlay', 'dry']] }).wet).toBe(false);
    const touch = only('set-to-touch', 600, 600);
    expect(clockOf({ cement: touch, atMin: 10 }).wet).toBe(true);
    expect(clockOf({ cement: touch, atMin: 10_000 })).toMatchObject({ wet: true, state: 'due' });
    expect(clockOf({ cement: touch, atMin: 60, taps: [[60, 'set-to-touch', 'dry']] }).wet).toBe(false);
  });
});

describe('in other air', () => {
  test('the heater comes on: what is left gets shorter', () => {
    const cold = { airC: 13, rhPct: 80 };
    const without = clockOf({ points: probed(0, 1440, cold), atMin: 60 });
    const points = [...probed(0, 50, cold), ...probed(60, 1440, { airC: 23, rhPct: 43 })];
    const heated = clockOf({ points, atMin: 60 });
    const left = ({ stages }: CoatClock): number => (minutes(stages[1]?.likelyMs) ?? Number.NaN) - 60;
    expect(left(without)).toBeGreaterThan(300);
    expect(left(heated)).toBeLessThan(100);
  });

  test('in saturated air it stands: no time as far as can be seen, and wet', () => {
    const clock = clockOf({ points: probed(0, 1440, { airC: 15, rhPct: 100 }), atMin: 1435 });
    expect(clock).toMatchObject({ stands: true, state: 'drying', wet: true });
    expect(clock.stages.map(({ likelyMs }) => likelyMs)).toEqual([null, null, null, null]);
    expect(clock.stages.map(({ latestMs }) => latestMs)).toEqual([null, null, null, null]);
  });

  test('a night without data: a wider range', () => {
    const told = clockOf({ cement: exact, points: probed(0, 1440) });
    const untold = clockOf({ cement: exact, points: probed(-600, -590) });
    const width = ({ stages: [stage] }: CoatClock): number =>
      (stage?.latestMs ?? 0) - (stage?.earliestMs ?? 0);
    expect(width(untold)).toBeGreaterThan(1.5 * width(told));
    expect(untold.stages[0]?.likelyMs).toBe(told.stages[0]?.likelyMs);
  });
});

describe('a coat that dried while the clock was wrong', () => {
  const lost = (situation: Situation): CoatClock =>
    clockOf({ cement: exact, ...situation, more: { clockLost: true } });

  test('may be ready from now on, and is likely so as late as it was', () => {
    const [without, withIt] = [clockOf({ cement: exact, atMin: 10 }), lost({ atMin: 10 })];
    expect(withIt.stages).toEqual(
      without.stages.map((stage) => ({ ...stage, earliestMs: NOW_MS + 10 * MINUTE_MS })),
    );
    expect(withIt).toMatchObject({ state: 'drying', wet: true });
    expect(withIt.why[0]).toBe('clock');
  });

  test('may have been ready before, where it may without that', () =>
    expect(lost({ atMin: 80 }).stages).toEqual(clockOf({ cement: exact, atMin: 80 }).stages));

  test('may be ready by now even where it stands still in the air of now', () => {
    const [stage] = lost({ points: probed(0, 60, { airC: 15, rhPct: 100 }), atMin: 30 }).stages;
    expect([minutes(stage?.earliestMs), stage?.likelyMs, stage?.latestMs]).toEqual([30, null, null]);
  });

  test('is not ready before it was put on, nor before it was found tacky', () => {
    expect(minutes(lost({ atMin: -30 }).stages[0]?.earliestMs)).toBe(0);
    const tacky = lost({ atMin: 10, taps: [[20, 'ready-for-iron', 'tacky']] });
    expect(minutes(tacky.stages[0]?.earliestMs)).toBe(20);
  });
});

test('a tap at a stage that this version of the cement doesn’t have does no harm', () => {
  const clock = clockOf({ cement: exact, atMin: 30, taps: [[30, 'set-to-touch', 'tacky']] });
  expect(clock).toMatchObject({ state: 'drying', stage: 'ready-for-iron', wet: true });
  expect(minutes(clock.stages[0]?.likelyMs)).toBe(60);
});
