import { describe, expect, test } from 'vitest';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, probeSettings, watchSettings } from './support/settings.ts';

const SECOND = 'board/2';
const two = watchSettings([probeSettings(PROBE), probeSettings(SECOND)]);
const both = (): Live =>
  new Live(carried(two))
    .readAll(80, { [PROBE]: (s) => 20 + 1.5 * s, [SECOND]: (s) => 22 + 1.5 * s })
    .readAll(20, { [PROBE]: 140, [SECOND]: 142 })
    .afresh();

const saw = (s: number) => 150 + 14 * (1 - 4 * Math.abs(((s / 100 + 0.25) % 1) - 0.5));

describe('two probes on one iron', () => {
  test('one fails: an alarm says so, the other takes the lead, and the limit is watched on', () => {
    const live = both();
    expect(live.state.leader).toBe(PROBE);
    live.readAll(12, { [PROBE]: null, [SECOND]: 142 });
    expect(live.changes).toEqual(['no-reading raised']);
    expect(live.alarm('no-reading', PROBE)?.state).toBe('unacknowledged');
    expect(live.alarm('no-reading', SECOND)?.state).toBe('normal');
    expect(live.state.leader).toBe(SECOND);
    live.readAll(2, { [PROBE]: null, [SECOND]: LIMIT_C + 1 });
    expect(live.alarm('over-limit', SECOND)?.state).toBe('unacknowledged');
  });

  test('the new leader has watched all along: cycles and phase go on', () => {
    const live = both().readAll(400, { [PROBE]: saw, [SECOND]: (s) => saw(s) + 2 });
    const known = live.state.others[SECOND];
    expect(known?.cycles.length).toBeGreaterThanOrEqual(2);
    live.afresh().readAll(11, { [PROBE]: null, [SECOND]: (s) => saw(s) + 2 });
    expect(live.state.leader).toBe(SECOND);
    expect(live.state.behaviour.cycles.length).toBeGreaterThanOrEqual(known?.cycles.length ?? 0);
    expect(live.found.filter((f) => f.finding.kind === 'phase')).toEqual([]);
  });

  test('a leader that flickers keeps the lead, and one that comes back doesn’t take it', () => {
    const live = both();
    for (let i = 0; i < 20; i++)
      live.readAll(2, { [PROBE]: null, [SECOND]: 142 }).readAll(0.2, { [PROBE]: 140, [SECOND]: 142 });
    expect(live.state.leader).toBe(PROBE);
    live.readAll(12, { [PROBE]: null, [SECOND]: 142 }).readAll(60, { [PROBE]: 140, [SECOND]: 142 });
    expect(live.state.leader).toBe(SECOND);
  });

  test('each has peaks of its own: the hotter spot doesn’t cry at every cycle', () => {
    // Far enough under the limit for a lag that nobody has measured.
    const mean = LIMIT_C - 26;
    const saw = (s: number) => mean + 14 * (1 - 4 * Math.abs(((s / 60 + 0.25) % 1) - 0.5));
    const live = both()
      .readAll(150, { [PROBE]: saw, [SECOND]: (s) => saw(s) + 6 })
      .afresh();
    live.readAll(600, { [PROBE]: saw, [SECOND]: (s) => saw(s) + 6 });
    expect(live.changes.filter((c) => c.endsWith('raised'))).toEqual([]);
  });

  test('one that has come off doesn’t make the iron cold', () => {
    const live = both().readAll(300, { [PROBE]: (s) => Math.max(21, 140 - s * 2), [SECOND]: 142 });
    expect(live.state.thermometers[PROBE]?.heat).toBe('cold');
    expect(live.state.heat.is).toBe('hot');
    expect(live.found.filter((f) => f.finding.kind === 'heat')).toEqual([]);
  });

  test('a session is due and over once for the iron, not for each probe', () => {
    const live = new Live(carried(two));
    live.readAll(60, { [PROBE]: (s) => 20 + s, [SECOND]: (s) => 22 + s });
    live.readAll(160, { [PROBE]: (s) => 80 - s / 2, [SECOND]: (s) => 82 - s / 2 });
    const heat = live.found.flatMap(({ finding: f }) => (f.kind === 'heat' ? [f.change] : []));
    expect(heat).toEqual(['hot', 'cold']);
  });
});

describe('probes and settings', () => {
  const one = watchSettings();
  const hot = (): Live => new Live(carried(one)).read(1, 20).ramp(140, 2).read(5, 140).afresh();

  test('a sample of a probe that isn’t on this iron changes nothing', () => {
    const known = watchSettings([probeSettings(PROBE), probeSettings(SECOND)]);
    const settings = { ...known, iron: { ...known.iron, probes: [PROBE] } };
    const live = new Live(carried(settings)).read(5, 140).afresh();
    const { seq, tMs, ...before } = live.state;
    live.sample({ tC: 250 }, SECOND).sample({ ...emptySample('stranger/1'), tC: 250 }, 'stranger/1');
    const { seq: seqAfter, tMs: tMsAfter, ...after } = live.state;
    expect(after).toEqual(before);
    expect([seqAfter - seq, tMsAfter - tMs]).toEqual([2, 0]);
    expect(live.found).toEqual([]);
  });

  test('a probe taken off the iron takes its alarms along; unseen ones still have to be acknowledged', () => {
    const live = both().readAll(3, { [PROBE]: LIMIT_C + 1, [SECOND]: 142 });
    live.give({ kind: 'settings', settings: watchSettings([probeSettings(SECOND)]) }).afresh();
    expect(Object.keys(live.state.thermometers)).toEqual([SECOND]);
    expect([live.state.leader, live.state.others]).toEqual([null, { [SECOND]: live.state.others[SECOND] }]);
    live.readAll(10, { [SECOND]: 142 });
    expect(live.state.leader).toBe(SECOND);
    expect(live.alarm('over-limit', PROBE)?.state).toBe('returned-unacknowledged');
    live.acknowledge('over-limit', PROBE);
    expect(live.alarm('over-limit', PROBE)?.state).toBe('normal');
  });

  test('one put on in mid-session has not been heard: its device being there, it has to read', () => {
    const live = hot().give({ kind: 'settings', settings: two });
    expect(live.state.readings[SECOND]?.quality).toBe('silent');
    live.read(4, 140);
    expect(live.changes).toEqual(['no-reading raised']);
    expect(live.alarm('no-reading', SECOND)?.state).toBe('unacknowledged');
  });

  test('a lower limit counts from the moment it is set', () => {
    const live = hot().give({ kind: 'settings', settings: watchSettings(one.probes, { fabricLimitC: 130 }) });
    live.read(1, 140);
    expect(live.changes).toEqual(['over-limit raised']);
  });

  test('another unit: no false jump, and the plate is what it says then', () => {
    const live = new Live(carried(one)).read(20, 175);
    const degF = watchSettings([probeSettings(PROBE, { unit: 'degF' })]);
    live.give({ kind: 'settings', settings: degF }).afresh().read(5, 175);
    const reading = live.state.readings[PROBE];
    expect(reading?.quality === 'ok' ? reading.plateC : null).toBeCloseTo(79.44, 1);
    expect(live.found.filter((f) => f.finding.kind === 'quality')).toEqual([]);
  });

  test('settings that change nothing disturb nothing', () => {
    const live = hot();
    const { seq: _, ...before } = live.state;
    const { seq: __, ...after } = live.give({ kind: 'settings', settings: one }).state;
    expect(after).toEqual(before);
  });
});

const swung = (): Live => new Live(carried(watchSettings())).read(1, 20).ramp(140, 2).swing(130, 3).afresh();

describe('time', () => {
  test('a suspend of eight hours: said as silence; then the plate is judged afresh', () => {
    const live = swung().wait(8 * 3600);
    expect(live.changes).toEqual(['no-reading raised', 'unattended raised', 'left-alone raised']);
    live.afresh().read(3, 25);
    expect(live.changes).toEqual(['unattended cleared', 'left-alone cleared', 'no-reading cleared']);
    expect(live.state.behaviour).toMatchObject({ phase: 'cold', cycles: [] });
  });

  test('an input that is late by the clock counts as of now', () => {
    const live = swung();
    const { tMs } = live.state;
    live.tMs = tMs - 5000;
    live.sample({ tC: 130 });
    expect(live.entries.at(-1)?.tMs).toBe(tMs);
    expect(live.state.tMs).toBe(tMs);
  });

  test('a board that was reset in mid-session goes on without a jump in time', () => {
    const live = swung();
    const sampled = (deviceMs: number) => {
      live.tMs += 100;
      live.sample({ tC: 130, deviceMs });
      return live.state.readings[PROBE]?.atMs ?? 0;
    };
    for (let i = 0; i < 50; i++) sampled(9_000_000 + i * 100);
    for (let i = 0; i < 50; i++) expect(live.tMs - sampled(i * 100)).toBeLessThanOrEqual(200);
  });
});
