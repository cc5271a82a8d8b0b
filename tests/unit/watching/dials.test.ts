import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Refusal } from '../../../daemon/refusal.ts';
import { withCalibration, withNewProbe } from '../../../daemon/settings/change.ts';
import { dialOf, firstSettings } from '../../../daemon/settings/settings.ts';
import type { Calibration } from '../../../shared/calibration/calibration.ts';
import { ironDialSchema } from '../../../shared/messages/dial.ts';
import { emfUv, hotJunctionC } from '../../../shared/thermocouple/thermocouple.ts';
import { type Bench, bench, FakeSource, foldedAgain } from './support/bench.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const settled = (): Promise<unknown> => vi.advanceTimersByTimeAsync(2000);
const sessionOf = ({ program }: Bench): string => program.live().situation.irons[0]?.session ?? '';

/** An iron on its rest with its dial at a told mark, cycling around `meanC`. */
async function sitting(
  mark: number,
  meanC: number,
  simulated = false,
  before: (made: Bench) => Promise<unknown> = () => Promise.resolve(),
) {
  const made = bench();
  const board = new FakeSource(simulated ? 'simulated' : 'A', made.clock, simulated);
  made.program.addSource(board);
  board.link('connected');
  made.heat(board, 22, 3);
  await before(made);
  await made.desk.startSession('iron-1', 'start');
  await made.desk.mark(sessionOf(made), { kind: 'place', place: 'on-rest' }, 'rest');
  await tell(made, mark);
  made.heat(board, meanC + 12, meanC - 10);
  await cycle(made, board, meanC, 5);
  return { ...made, board };
}

const tell = (one: Bench, mark: number) =>
  one.desk.mark(sessionOf(one), { kind: 'dial', mark }, `dial-${one.clock.nowMs()}`);

async function cycle(one: Bench, board: FakeSource, meanC: number, cycles: number): Promise<void> {
  for (let i = 0; i < cycles; i++) {
    one.heat(board, meanC - 12, 60);
    one.heat(board, meanC + 12, 30);
  }
  await settled();
}

/** Another stretch: off its rest for a moment, and back. */
async function again(one: Bench & { board: FakeSource }, meanC: number): Promise<void> {
  await one.desk.mark(sessionOf(one), { kind: 'place', place: 'on-work' }, `w-${one.clock.nowMs()}`);
  one.heat(one.board, meanC + 12, 2);
  await one.desk.mark(sessionOf(one), { kind: 'place', place: 'on-rest' }, `r-${one.clock.nowMs()}`);
  await cycle(one, one.board, meanC, 6);
}

describe('the dial of an iron', () => {
  it('is charted by itself, and says where to set it for each stage', async () => {
    const one = await sitting(4, 135);
    const dial = one.desk.dials.dial('iron-1');
    ironDialSchema.parse(dial);
    expect(dial.chart.points).toMatchObject([{ mark: 4, kind: 'measured', cycles: 3 }]);
    expect(dial.chart.points[0]?.meanC).toBeCloseTo(135, 0);
    expect(dial.last).toMatchObject({ mark: 4, figures: { cycles: 3 } });
    // Up from 22 degC to the first peak at 147: the figures of that stay when later stretches begin warm.
    expect(dial.warmUp?.heatingUpFromC).toBeCloseTo(22, 0);
    expect(Math.abs((dial.warmUp?.heatingUpExcessK ?? 0) - 12)).toBeLessThan(1);
    expect(dial.drawing.stretches).toMatchObject([{ mark: 4, count: 3 }]);
    expect(dial.drawing.stretches[0]?.lines[0]).toHaveLength(6);
    expect(dial.uncertaintyK).toBeGreaterThan(1);
    expect(dial.advice.map((a) => a.stageId)).toContain('final');
    expect(dial.highest).toEqual({ mark: 4, atEnd: true });
    expect(one.program.live().situation.irons[0]?.dial).toEqual({ mark: 4, doubted: false });
    const { stored, replayed } = foldedAgain(one.shelf, 0);
    expect(stored.some((f) => f.finding.kind === 'stretch')).toBe(true);
    expect(replayed).toEqual(stored);
  });

  it('of a simulated iron is its own: a real one of the same id has none of it', async () => {
    const one = await sitting(4, 135, true);
    expect(one.settings.current.dials).toMatchObject([{ iron: 'iron-1', simulated: true }]);
    expect(dialOf(one.settings.current, { id: 'iron-1', simulated: false })).toBeNull();
    const left = { ...firstSettings, dials: one.settings.current.dials };
    expect(withNewProbe(left, 'B/1', false).irons[0]?.id).toBe('iron-2');
  });

  it('is not learned from a probe that reads as another type would; what a hand thermometer told stays', async () => {
    // A type J that its board takes for a type K, on a plate of 150 degC, its cold junction at 22.
    const terminalUv = (emfUv('J', 150) ?? 0) - (emfUv('J', 22) ?? 0);
    const readC = hotJunctionC('K', terminalUv, 22) ?? expect.unreachable();
    const typed = { mark: 4, meanC: 150, peakC: null, troughC: null };
    const one = await sitting(4, readC, false, (made) => made.desk.dials.addTypedPoint('iron-1', typed));
    const alarm = one.program.live().alarms.find((a) => a.kind === 'suspect-probe');
    expect(alarm).toMatchObject({ probe: 'A/1', detail: 'type J', state: 'unacknowledged' });
    const { points } = one.desk.dials.dial('iron-1').chart;
    expect(points.map(({ kind, meanC }) => [kind, meanC])).toEqual([['typed', 150]]);
    const { stored, replayed } = foldedAgain(one.shelf, 0);
    expect(replayed).toEqual(stored);
  });

  it('is held against what another probe of the same iron had measured', async () => {
    const one = await sitting(4, 135);
    const watched = () => one.program.settingsOf(one.settings.current.irons[0] ?? expect.unreachable());
    // Its own figures are what drift is for.
    expect(watched().charted).toBeUndefined();
    const [probe] = one.desk.settings.probes();
    const { id, ...draft } = probe ?? expect.unreachable();
    await one.desk.settings.putProbe(id, { ...draft, thermocouple: 'J' });
    expect(watched().charted).toEqual([{ mark: 4, meanC: expect.closeTo(135, 0) }]);
  });

  it('that drifts raises an alarm, which goes once the new figures are accepted', async () => {
    const one = await sitting(4, 135);
    for (let i = 0; i < 5; i++) await again(one, 146);
    const dial = one.desk.dials.dial('iron-1');
    expect(dial.drift?.byK).toBeGreaterThan(8);
    const alarm = () => one.program.live().alarms.find((a) => a.kind === 'drift');
    expect(alarm()).toMatchObject({ priority: 1, state: 'unacknowledged' });
    const after = await one.desk.dials.accept('iron-1');
    expect(after.drift).toBeNull();
    expect(after.chart.points[0]?.meanC).toBeCloseTo(146, 0);
    expect(alarm()?.state).toBe('returned-unacknowledged');
    await expect(one.desk.dials.accept('iron-1')).rejects.toThrow(/keeps to its dial chart/);
  });
});

/** A calibration of the board's probe by one point: it adds `offsetK` to what the probe reads. */
const calibration = (id: string, offsetK: number): Omit<Calibration, 'version'> => ({
  id,
  probe: 'A/1',
  by: '',
  mounting: 'fitted',
  iron: 'iron-1',
  dueUtcMs: null,
  madeAt: '2026-03-01T12:00:00Z',
  points: [
    {
      kind: 'contact',
      readingC: 150,
      readingSpreadK: 0.2,
      readings: 20,
      resolutionK: 0.1,
      referenceC: 150 + offsetK,
      referenceUK: 1,
      pressureHpa: null,
      altitudeM: null,
      instrument: '',
      takenAt: '2026-03-01T12:00:00Z',
    },
  ],
  correction: {
    method: 'offset',
    t0C: 150,
    b1K: offsetK,
    b2: 0,
    u1K: 1,
    u2: 0,
    r: 0,
    sK: null,
    fromC: 150,
    toC: 150,
  },
});

async function calibrate(one: Bench, id: string, offsetK: number): Promise<void> {
  await one.settings.change((s) => withCalibration(s, calibration(id, offsetK)));
  await one.program.applySettings();
}

describe('a new calibration of the probe', () => {
  it('is no drift: the chart is brought under it, and later stretches keep to that', async () => {
    const one = await sitting(4, 135);
    const before = one.desk.dials.dial('iron-1').chart.points[0]?.meanC ?? 0;
    await calibrate(one, 'first', 9);
    for (let i = 0; i < 3; i++) await again(one, 135);
    await calibrate(one, 'second', -4);
    for (let i = 0; i < 3; i++) await again(one, 135);
    const dial = one.desk.dials.dial('iron-1');
    expect(dial.since.length).toBeGreaterThanOrEqual(6);
    expect(dial.drift).toBeNull();
    expect(one.program.live().alarms.some((a) => a.kind === 'drift')).toBe(false);
    expect(dial.chart.points[0]).toMatchObject({ madeWith: { probe: 'A/1', calibration: 'second' } });
    expect(dial.chart.points[0]?.meanC).toBeCloseTo(before - 4, 9);
    const { stored, replayed } = foldedAgain(one.shelf, 0);
    expect(replayed).toEqual(stored);
  });

  it('hides no true drift', async () => {
    const one = await sitting(4, 135);
    await calibrate(one, 'first', 9);
    for (let i = 0; i < 3; i++) await again(one, 146);
    expect(one.desk.dials.dial('iron-1').drift?.byK).toBeCloseTo(11, 0);
  });

  it('in the middle of a stretch mixes nothing: the cycles before it are left out', async () => {
    const one = await sitting(4, 135);
    await again(one, 135);
    await calibrate(one, 'first', 20);
    await cycle(one, one.board, 135, 9);
    const last = one.desk.dials.dial('iron-1').last;
    expect(last).toMatchObject({ madeWith: { calibration: 'first' } });
    expect(last?.figures.meanC).toBeCloseTo(155, 0);
    expect(last?.figures.meanSpreadK ?? 9).toBeLessThan(0.5);
  });
});

describe('what was typed from a hand thermometer', () => {
  const withIron = () => bench({ settings: withNewProbe(firstSettings, 'A/1', false) });

  it('makes a chart too, and advice from it says so', async () => {
    const { desk } = withIron();
    await desk.dials.addTypedPoint('iron-1', { mark: 3, meanC: 115, peakC: 122, troughC: 110 });
    const dial = await desk.dials.addTypedPoint('iron-1', { mark: 6, meanC: 175, peakC: 181, troughC: 168 });
    expect(dial.chart.points.map((p) => p.kind)).toEqual(['typed', 'typed']);
    const initial = dial.advice.find((a) => a.stageId === 'initial')?.advice;
    expect(initial).toMatchObject({ kind: 'set', typed: true, interpolated: true });
  });

  it('is refused where it can’t be, or a probe has measured that mark', async () => {
    const { desk } = withIron();
    await expect(
      desk.dials.addTypedPoint('iron-1', { mark: 3, meanC: 115, peakC: 110, troughC: null }),
    ).rejects.toThrow(/must rise/);
    await expect(
      desk.dials.addTypedPoint('iron-9', { mark: 3, meanC: 115, peakC: null, troughC: null }),
    ).rejects.toBeInstanceOf(Refusal);
    const one = await sitting(4, 135);
    await expect(
      one.desk.dials.addTypedPoint('iron-1', { mark: 4, meanC: 140, peakC: null, troughC: null }),
    ).rejects.toThrow(/measured by a probe/);
  });

  it('can be taken out again', async () => {
    const { desk } = withIron();
    await desk.dials.addTypedPoint('iron-1', { mark: 3, meanC: 115, peakC: null, troughC: null });
    expect((await desk.dials.removePoint('iron-1', 3)).chart).toMatchObject({
      points: [],
      earlier: [{ mark: 3 }],
    });
    await expect(desk.dials.removePoint('iron-1', 3)).rejects.toThrow(/no mark 3/);
  });
});
