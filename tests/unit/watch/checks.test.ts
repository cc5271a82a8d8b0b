import { describe, expect, it } from 'vitest';
import type { PlaceDraft } from '../../../shared/thermometer/place.ts';
import { countsAs } from '../../../shared/watch/counted.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import { isHot } from '../../../shared/watch/hot.ts';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, probeSettings, watchSettings } from './support/settings.ts';

const at = (is: PlaceDraft | null, iron = 'iron') =>
  watchSettings([
    probeSettings(PROBE, { place: { probe: PROBE, iron, toldAt: '2026-03-01T09:00:00Z', is } }),
  ]);
const onPad = at({ kind: 'check-pad' });

const ROOM_C = 22;
/** What a pad of 6 s reads with a plate on it, and bare with 60 s of its own. */
const under =
  (plateC: number, fromC = ROOM_C) =>
  (s: number) =>
    plateC - (plateC - fromC) * Math.exp(-s / 6);
const bare = (fromC: number) => (s: number) => ROOM_C + (fromC - ROOM_C) * Math.exp(-s / 60);

const padWatch = () => new Live(carried(onPad)).read(20, ROOM_C);
const found = <K extends Finding['kind']>(live: Live, kind: K) =>
  live.found.flatMap(({ finding }) =>
    finding.kind === kind ? [finding as Extract<Finding, { kind: K }>] : [],
  );
const raised = (live: Live) => found(live, 'alarm').filter((f) => f.change === 'raised');

describe('an iron that is served by a check pad', () => {
  it('is checked as it is parked: the check is told as it settles and as it ends', () => {
    const live = padWatch().read(60, under(150)).read(60, bare(150));
    const checks = found(live, 'check').map((f) => f.check);
    expect(checks.map((c) => [c.settledMs !== null, c.ended])).toEqual([
      [true, null],
      [true, 'lifted'],
    ]);
    expect(checks[1]?.hottestC).toBeGreaterThan(149);
    expect(checks[1]?.hottestC).toBeLessThanOrEqual(150);
    expect(checks[1]?.guardBandK).toBeGreaterThan(4);
    expect(live.state.checks.last).toEqual(checks[1]);
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot']);
  });

  it('has had no check where it was lifted too soon', () => {
    const live = padWatch().read(10, under(150)).read(60, bare(120));
    expect(live.state.checks.last).toBeNull();
    expect(live.state.checks.missed).toMatchObject({ settledMs: null, ended: 'lifted' });
    expect(live.state.checks.missed?.hottestC).toBeGreaterThan(100);
  });

  it('raises no alarm by parking, by being lifted, or by a pad that is silent with nothing on it', () => {
    // In one step from cold to hot, as a board that sends seldom has it.
    const live = padWatch().read(40, 150).read(1, 60).read(60, bare(60)).wait(120);
    expect(live.state.readings[PROBE]?.quality).toBe('silent');
    expect(raised(live)).toEqual([]);
    expect(found(live, 'quality').map((f) => f.quality)).toEqual(['ok', 'silent']);
  });

  it('raises no-reading where the pad falls silent with the iron on it', () => {
    const live = padWatch().read(60, under(150)).wait(5);
    expect(raised(live).map((f) => f.alarm.kind)).toEqual(['no-reading']);
    live.wait(60).read(5, ROOM_C);
    expect(live.state.alarms[`no-reading:${PROBE}`]?.state).toBe('returned-unacknowledged');
  });

  it('raises over-limit by whatever the pad reads, settled or not, and never by where it is heading', () => {
    const near = padWatch().read(40, under(LIMIT_C - 6));
    expect(raised(near)).toEqual([]);
    const over = padWatch().read(30, under(260));
    expect(raised(over).map((f) => f.alarm.kind)).toEqual(['over-limit']);
    expect(over.state.checks.last).toBeNull();
  });

  it('is hot until a check says less, whatever the bare pad reads', () => {
    const live = padWatch();
    expect(isHot(live.state)).toBe(true);
    live.read(60, under(150)).read(600, bare(150));
    expect(isHot(live.state)).toBe(true);
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot']);
    live.read(90, under(36)).read(20, (s) => 36 - 0.001 * s);
    expect(isHot(live.state)).toBe(false);
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot', 'cold']);
    live.read(60, under(120, 36));
    expect(isHot(live.state)).toBe(true);
  });

  it('learns no thermostat, no band and no chart from its pad', () => {
    const live = padWatch().stage('initial').dial(4).place('on-rest').read(60, under(150)).swing(135, 6);
    expect(live.state.leader).toBeNull();
    expect(found(live, 'cycle')).toEqual([]);
    expect(found(live, 'stretch')).toEqual([]);
    expect(found(live, 'phase')).toEqual([]);
  });

  it('counts what the pad reads only while something lies on it', () => {
    const live = padWatch();
    expect(countsAs(live.state, PROBE)).toBe('bare');
    live.read(8, under(150));
    expect(countsAs(live.state, PROBE)).toBe('settling');
    live.read(60, 150);
    expect(countsAs(live.state, PROBE)).toBe('checked');
  });
});

describe('a probe that was moved to another iron', () => {
  it('counts for nothing until its place is told, but for limits and heat', () => {
    const live = new Live(carried(at(null, 'another'))).read(40, ROOM_C).ramp(120, 1.5);
    expect(countsAs(live.state, PROBE)).toBe('not-told');
    expect(isHot(live.state)).toBe(true);
    live.dial(4).place('on-rest').swing(135, 8);
    expect(found(live, 'cycle')).toEqual([]);
    expect(live.state.leader).toBeNull();
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot']);
    live.ramp(LIMIT_C + 3, 0.8);
    expect(raised(live).map((f) => f.alarm.kind)).toContain('over-limit');
    live.read(120, ROOM_C);
    expect(isHot(live.state)).toBe(true);
  });

  it('counts from the moment at which it is told', () => {
    const live = new Live(carried(at(null, 'another'))).read(20, ROOM_C).ramp(120, 1.5);
    live.give({ kind: 'settings', settings: at({ kind: 'fitted', spot: 'tip', by: 'sprung' }) }).read(5, 120);
    expect(countsAs(live.state, PROBE)).toBe('monitored');
    expect(live.state.leader).toBe(PROBE);
  });

  it('tells nothing at all while it is loose, and its alarms go', () => {
    const live = new Live(carried(watchSettings()))
      .read(20, ROOM_C)
      .ramp(LIMIT_C + 3, 1.5)
      .read(5, LIMIT_C + 3);
    expect(live.state.alarms[`over-limit:${PROBE}`]?.state).toBe('unacknowledged');
    live
      .give({ kind: 'settings', settings: at({ kind: 'loose' }) })
      .read(30, 200)
      .wait(8);
    expect(live.state.alarms[`over-limit:${PROBE}`]?.state).toBe('returned-unacknowledged');
    expect(countsAs(live.state, PROBE)).toBe('loose');
    expect(isHot(live.state)).toBe(true);
  });
});

describe('a reading that is typed', () => {
  const byHand = watchSettings([]);
  const typed = (live: Live, plateC: number) => live.mark({ kind: 'typed', plateC }).wait(10);

  it('is a finding of its own, of an iron without any probe too', () => {
    const live = typed(new Live(carried(byHand)), 150);
    expect(found(live, 'typed')).toMatchObject([{ typed: { plateC: 150, over: false } }]);
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot']);
    expect(raised(live)).toEqual([]);
    expect(isHot(live.state)).toBe(true);
    expect(live.state.readings).toEqual({});
  });

  it('over the limit raises the alarm, which stands until something else is read', () => {
    const live = typed(new Live(carried(byHand)), LIMIT_C + 1).wait(500);
    expect(raised(live)).toMatchObject([{ alarm: { kind: 'over-limit', probe: null, detail: 'typed' } }]);
    live.wait(3600);
    expect(live.state.alarms['over-limit']?.state).toBe('unacknowledged');
    typed(live, LIMIT_C - 20);
    expect(live.state.alarms['over-limit']?.state).toBe('returned-unacknowledged');
  });

  it('gives way to a probe on the plate, and to a later check', () => {
    const monitored = typed(new Live(carried(watchSettings())).read(5, 150), LIMIT_C + 1);
    expect(raised(monitored).map((f) => f.alarm.probe)).toContain(null);
    monitored.read(70, 150).wait(1).read(10, 150);
    expect(monitored.state.alarms['over-limit']?.state).toBe('returned-unacknowledged');
    const checked = typed(padWatch(), LIMIT_C + 1)
      .read(80, under(150))
      .read(10, 150);
    expect(checked.state.alarms['over-limit']?.state).toBe('returned-unacknowledged');
  });

  it('under 43 degC ends the heat of an iron that is read by hand only', () => {
    const live = typed(typed(new Live(carried(byHand)), 150), 30);
    expect(isHot(live.state)).toBe(false);
    expect(found(live, 'heat').map((f) => f.change)).toEqual(['hot', 'cold']);
    const monitored = typed(new Live(carried(watchSettings())).read(5, 150), 30);
    expect(isHot(monitored.state)).toBe(true);
    expect(found(monitored, 'heat').map((f) => f.change)).toEqual(['hot']);
  });
});
