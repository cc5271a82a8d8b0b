import { describe, expect, test } from 'vitest';
import { findingSubject } from '../../../shared/watch/finding.ts';
import { refusals } from '../../../shared/words/refusals.ts';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, probeSettings, watchSettings } from './support/settings.ts';

/** Of a probe that does not trail: the guard band is the same whether the plate moves or rests. */
const prompt = { tauS: 0.01, standardS: 0, measuredAt: '2026-03-01T10:00:00Z' };
const settings = watchSettings([probeSettings(PROBE, { lag: prompt })]);
const hot = (): Live => new Live(carried(settings)).read(2, 20).ramp(150, 2).read(20, 150).afresh();

describe('over the limit', () => {
  test('raised half a second after the plate, counting its guard band, is over; its peak is kept', () => {
    const live = hot()
      .ramp(LIMIT_C + 4, 1)
      .ramp(170, 1);
    expect(live.changes).toContain('over-limit raised');
    expect(live.alarm('over-limit')?.peakC).toBeCloseTo(LIMIT_C + 4, 0);
    const raisedMs = live.alarm('over-limit')?.raisedAtMs ?? 0;
    const overMs = live.entries.find(
      (e) => e.input.kind === 'sample' && (e.input.sample.tC ?? 0) >= LIMIT_C,
    )?.tMs;
    expect(raisedMs - (overMs ?? 0)).toBe(500);
  });

  test('a spike of less than that raises nothing', () => {
    expect(
      hot()
        .read(0.4, LIMIT_C + 1)
        .read(20, 150).changes,
    ).toEqual([]);
  });

  test('stands in the deadband; gone 5 s after the plate is inside it; acknowledged, it is over', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .read(60, LIMIT_C - 2);
    expect(live.alarm('over-limit')?.state).toBe('unacknowledged');
    live.read(4.9, LIMIT_C - 4);
    expect(live.alarm('over-limit')?.state).toBe('unacknowledged');
    live.read(0.3, LIMIT_C - 4);
    expect(live.alarm('over-limit')?.state).toBe('returned-unacknowledged');
    live.acknowledge('over-limit', PROBE);
    expect(live.alarm('over-limit')?.state).toBe('normal');
    expect(live.changes.filter((c) => c.startsWith('over'))).toEqual([
      'over-limit raised',
      'over-limit cleared',
      'over-limit acknowledged',
    ]);
  });

  test('a sample in the deadband raises nothing by itself', () => {
    expect(
      hot()
        .ramp(LIMIT_C - 1, 0.2)
        .read(60, LIMIT_C - 1)
        .changes.filter((c) => c.startsWith('over')),
    ).toEqual([]);
  });

  test('a fault never clears it, however long', () => {
    const live = hot().read(2, LIMIT_C + 1);
    live.readAll(600, { [PROBE]: null }).wait(600);
    expect(live.alarm('over-limit')?.state).toBe('unacknowledged');
  });

  test('a jump over it counts at once', () => {
    expect(hot().read(1, 250).changes).toContain('over-limit raised');
  });

  test('acknowledged and left so, it is presented again after two minutes', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .acknowledge('over-limit', PROBE)
      .read(119, LIMIT_C + 1);
    expect(live.alarm('over-limit')?.state).toBe('acknowledged');
    live.read(2, LIMIT_C + 1);
    expect(live.alarm('over-limit')).toMatchObject({ state: 'unacknowledged', reAlarms: 1 });
  });
});

describe('no reading', () => {
  test('an open junction while hot: within four seconds, with the fault’s name', () => {
    const live = hot().readAll(4, { [PROBE]: null });
    expect(live.changes).toEqual(['no-reading raised']);
    expect(live.alarm('no-reading')).toMatchObject({ detail: 'open' });
    expect((live.alarm('no-reading')?.raisedAtMs ?? 0) - (live.tMs - 4000)).toBeLessThan(2000);
  });

  test('silence while hot: within four seconds too', () => {
    const live = hot().wait(4);
    expect(live.changes).toEqual(['no-reading raised']);
    expect(live.alarm('no-reading')?.detail).toBe('silent');
  });

  test('a device that is gone, lines that are garbled, a frozen value, a jump', () => {
    const lost = hot().give({ kind: 'device', device: 'board', link: 'lost', detail: 'pulled' }).wait(2);
    expect(lost.alarm('no-reading')).toMatchObject({ state: 'unacknowledged', detail: 'device-lost' });
    const garbled = hot();
    for (let i = 0; i < 5; i++) garbled.wait(1).give({ kind: 'rejected', device: 'board', count: 9 });
    expect(garbled.alarm('no-reading')).toMatchObject({ state: 'unacknowledged', detail: 'garbled' });
    const frozen = hot()
      .ramp(100, 1)
      .read(20, () => 100);
    expect(frozen.alarm('no-reading')).toMatchObject({ state: 'unacknowledged', detail: 'frozen' });
    expect(hot().read(2, 60).alarm('no-reading')?.detail).toBe('jump');
  });

  test('never after the plate has been measured cold, until it is measured again', () => {
    const live = hot().ramp(30, 0.5).afresh();
    expect(live.readAll(600, { [PROBE]: null }).wait(600).changes).toEqual([]);
  });

  test('a plate that was never measured may be hot, once its device is there', () => {
    expect(new Live(carried(settings), 0, null).wait(60).changes).toEqual([]);
    expect(new Live(carried(settings)).wait(4).changes).toEqual(['no-reading raised']);
    expect(new Live(carried(settings), 0, null).readAll(4, { [PROBE]: null }).changes).toEqual([
      'no-reading raised',
    ]);
  });

  test('a board that was reset by opening its port has five seconds to start', () => {
    const live = hot().give({ kind: 'device', device: 'board', link: 'lost', detail: '' }).wait(0.5);
    live.give({ kind: 'device', device: 'board', link: 'starting', detail: '' }).wait(3);
    live.give({ kind: 'device', device: 'board', link: 'connected', detail: '' }).wait(0.1).read(5, 149);
    expect(live.changes).toEqual([]);
  });

  test('but one that starts again and again, and is never heard, is at fault', () => {
    const live = hot();
    for (let i = 0; i < 6; i++) {
      live.give({ kind: 'device', device: 'board', link: 'lost', detail: '' }).wait(0.5);
      live.give({ kind: 'device', device: 'board', link: 'starting', detail: '' }).wait(2);
    }
    expect(live.alarm('no-reading')?.state).toBe('unacknowledged');
  });

  test('and so is one that never comes up', () => {
    const live = hot().give({ kind: 'device', device: 'board', link: 'lost', detail: '' });
    live.give({ kind: 'device', device: 'board', link: 'starting', detail: '' }).wait(6.5);
    expect(live.alarm('no-reading')).toMatchObject({ state: 'unacknowledged', detail: 'silent' });
  });

  test('cleared by a fresh reading two seconds long', () => {
    const live = hot().wait(4).read(1.9, 150);
    expect(live.alarm('no-reading')?.state).toBe('unacknowledged');
    live.read(0.3, 150);
    expect(live.alarm('no-reading')?.state).toBe('returned-unacknowledged');
  });
});

describe('heading for the limit', () => {
  test('some six seconds ahead where its peaks are not known, and not again when the limit is then passed', () => {
    const live = hot().ramp(LIMIT_C + 2, 1);
    expect(live.changes).toEqual(['heading-for-limit raised', 'over-limit raised']);
    const leadMs =
      (live.alarm('over-limit')?.raisedAtMs ?? 0) - (live.alarm('heading-for-limit')?.raisedAtMs ?? 0);
    expect(leadMs).toBeGreaterThan(4500);
    expect(leadMs).toBeLessThan(6500);
  });

  test('not by a thermostat that swings up to just under it, once it has turned there', () => {
    const live = hot()
      .ramp(LIMIT_C - 4, 0.8)
      .ramp(LIMIT_C - 30, 0.35)
      .afresh()
      .swing(LIMIT_C - 17, 10);
    expect(live.changes.filter((c) => c.endsWith('raised'))).toEqual([]);
  });

  test('but once the plate passes those peaks', () => {
    const live = hot()
      .ramp(174, 0.8)
      .swing(160, 3)
      .afresh()
      .ramp(LIMIT_C + 2, 0.8);
    expect(live.changes).toEqual(['heading-for-limit raised', 'over-limit raised']);
  });
});

const worked = (meanC: number): Live =>
  new Live(carried(settings))
    .stage('initial')
    .read(2, 20)
    .ramp(meanC + 20, 1)
    .afresh();

describe('out of the band', () => {
  test('whole cycles 12 K above it', () => {
    expect(worked(141).swing(141, 4).changes).toEqual(['above-band raised']);
  });

  test('whole cycles 12 K below it', () => {
    expect(worked(101).swing(101, 4).changes).toEqual(['below-band raised']);
  });

  test('a mean inside it is neither, though each cycle swings through it on both sides', () => {
    expect(worked(121).swing(121, 12).changes).toEqual([]);
  });

  test('not on its rest, nor without a stage', () => {
    expect(worked(141).place('on-rest').swing(141, 5).changes).toEqual([]);
    expect(worked(141).stage(null).swing(141, 5).changes).toEqual([]);
  });

  test('over once the dial is turned and the next cycles are inside', () => {
    const live = worked(101).swing(101, 4).ramp(140, 0.8).swing(121, 4);
    expect(live.changes).toEqual(['below-band raised', 'below-band cleared']);
  });

  test('over at once where another stage is chosen, or its band is changed', () => {
    expect(worked(101).swing(101, 4).stage('intermediate').changes.at(-1)).toBe('below-band cleared');
    const wider = settings.schedule.stages.map((s) => (s.id === 'initial' ? { ...s, lowC: 80 } : s));
    const live = worked(101).swing(101, 4);
    live.give({ kind: 'settings', settings: watchSettings(settings.probes, { stages: wider }) });
    expect(live.changes.at(-1)).toBe('below-band cleared');
  });

  test('a stage with the same band is no other one to the thermostat', () => {
    const live = new Live(carried(settings)).stage('tack').read(2, 20).ramp(140, 1).swing(121, 5);
    const { cycles } = live.state.behaviour;
    expect(cycles.length).toBeGreaterThan(1);
    expect(live.stage('initial').state.behaviour.cycles).toBe(cycles);
  });

  test('switched off and cooling, it raises nothing', () => {
    const live = worked(121).swing(121, 4);
    live.read(3600, (s) => 20 + 87 * Math.exp(-s / 1500));
    expect(live.changes).toEqual([]);
  });
});

describe('not recording', () => {
  test('raised with the reason, cleared by itself', () => {
    const live = hot().give({ kind: 'keeping', kept: false, detail: 'The disk is full.' }).read(3, 150);
    expect(live.alarm('not-recording', null)).toMatchObject({
      state: 'unacknowledged',
      detail: 'The disk is full.',
    });
    live.give({ kind: 'keeping', kept: true, detail: '' });
    expect(live.changes).toEqual(['not-recording raised', 'not-recording cleared']);
  });
});

describe('commands', () => {
  test('acknowledged once; a second time is refused, with the reason', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .acknowledge('over-limit', PROBE)
      .acknowledge('over-limit', PROBE);
    expect(live.changes.filter((c) => c.endsWith('acknowledged'))).toHaveLength(1);
    expect(live.found.at(-1)?.finding).toMatchObject({ kind: 'refused', reason: refusals.alreadySeen });
  });

  test('an alarm that there is none of, or that doesn’t sound', () => {
    const live = hot().acknowledge('above-band');
    expect(live.found.at(-1)?.finding).toMatchObject({ kind: 'refused', reason: refusals.noSuchAlarm });
    live
      .read(2, LIMIT_C + 1)
      .acknowledge('over-limit', PROBE)
      .silence('over-limit', PROBE);
    expect(live.found.at(-1)?.finding).toMatchObject({ kind: 'refused', reason: refusals.notSounding });
  });

  test('silenced for a minute at most, then it sounds again', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .silence('over-limit', PROBE, 600_000)
      .afresh();
    live.read(59, LIMIT_C + 1);
    expect(live.changes).toEqual([]);
    live.read(1.1, LIMIT_C + 1);
    expect(live.changes).toEqual(['over-limit silence-ended']);
  });

  test('a stage that the schedule doesn’t have is refused', () => {
    const live = hot().stage('none');
    expect(live.found.at(-1)?.finding).toMatchObject({ kind: 'refused', reason: refusals.noSuchStage });
    expect(live.state.work.stageId).toBeNull();
  });
});

test('each finding of one input has a name of its own', () => {
  const live = hot()
    .readAll(3, { [PROBE]: null })
    .wait(3)
    .read(20, LIMIT_C + 3)
    .swing(150, 3);
  live.acknowledge('no-reading', PROBE).acknowledge('no-reading', PROBE);
  const names = live.found.map(({ seq, finding }) => `${seq} ${findingSubject(finding)}`);
  expect(new Set(names).size).toBe(names.length);
  expect(names.length).toBeGreaterThan(8);
});
