import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { withIron, withNewProbe } from '../../../daemon/settings/change.ts';
import { firstSettings } from '../../../daemon/settings/settings.ts';
import { ironEvennessSchema } from '../../../shared/messages/evenness.ts';
import { situationSchema } from '../../../shared/messages/live.ts';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import { type Bench, bench, FakeSource } from './support/bench.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** An iron with one probe, its plate at rest at 150 degC. */
function atRest() {
  const made = bench();
  const board = new FakeSource('A', made.clock);
  made.program.addSource(board);
  board.link('connected');
  made.heat(board, 22, 3);
  made.heat(board, 150, 60);
  made.heat(board, 150, 20);
  return { ...made, board };
}

const type = (one: Bench, place: 'probe' | 'toe' | 'heel', readC: number) =>
  one.desk.plates.addSpot('iron-1', { place, readC, thermometerK: 1 });

describe('spots that are typed', () => {
  it('are held against what the probe reads then; what is hotter goes into limits and advice', async () => {
    const one = atRest();
    await one.desk.dials.addTypedPoint('iron-1', { mark: 3, meanC: 115, peakC: 118, troughC: 112 });
    await one.desk.dials.addTypedPoint('iron-1', { mark: 6, meanC: 175, peakC: 178, troughC: 172 });
    const before = one.desk.dials.dial('iron-1');
    const bandBefore = one.program.live().probes[0]?.guardBandK ?? 0;
    await type(one, 'probe', 149);
    const after = await type(one, 'toe', 155);
    ironEvennessSchema.parse(after);
    expect(after.spots[1]?.probeC).toBeCloseTo(150, 0);
    expect(after.typed).toMatchObject({ hottest: 'toe', coldest: 'probe', lead: 'probe' });
    expect(after.limitsOverK).toBeCloseTo(6, 0);
    expect(after.adviceOverK).toBe(after.limitsOverK);
    const { probes, situation } = one.program.live();
    expect(probes[0]?.overK).toBe(after.limitsOverK);
    expect((probes[0]?.guardBandK ?? 0) - bandBefore).toBeGreaterThan(after.limitsOverK);
    expect(situationSchema.parse(situation).irons[0]?.evenness).toMatchObject({
      by: 'typed',
      hottest: 'toe',
    });
    const dial = one.desk.dials.dial('iron-1');
    expect(dial.unevennessK).toBe(after.limitsOverK);
    // The mark for the initial shrink goes down with the hottest spot, and uncertainty grows by what isn't known of it.
    const initial = (of: typeof dial) => of.advice.find((a) => a.stageId === 'initial')?.advice;
    expect([initial(before)?.kind, initial(dial)?.kind]).toEqual(['set', 'set']);
    const markOf = (of: typeof dial) => {
      const advice = initial(of);
      return advice?.kind === 'set' ? advice.mark : Number.NaN;
    };
    expect(markOf(dial)).toBeLessThan(markOf(before));
    expect(dial.uncertaintyK).toBeGreaterThan(before.uncertaintyK);
    expect(one.desk.calibrations.calibrations('A/1', 'C').budget).toMatchObject({ overK: after.limitsOverK });
  });

  it('can be typed again, taken out and forgotten', async () => {
    const one = atRest();
    await type(one, 'probe', 150);
    await type(one, 'toe', 160);
    expect((await type(one, 'toe', 153)).limitsOverK).toBeCloseTo(3, 0);
    expect((await one.desk.plates.removeSpot('iron-1', 'toe')).limitsOverK).toBe(0);
    await expect(one.desk.plates.removeSpot('iron-1', 'toe')).rejects.toThrow(
      /Nothing was typed for that place/,
    );
    await type(one, 'heel', 158);
    const forgotten = await one.desk.plates.forget('iron-1');
    expect(forgotten).toMatchObject({ spots: [], typed: null, limitsOverK: 0, adviceOverK: 0 });
    expect(one.program.live().situation.irons[0]?.evenness).toBeNull();
  });

  it('are refused where they can’t be true, or can’t be held against the probe', async () => {
    const one = atRest();
    await expect(type(one, 'toe', 300)).rejects.toThrow(/right unit/);
    one.heat(one.board, 162, 12);
    await expect(type(one, 'toe', 160)).rejects.toThrow(/too fast to be read by hand/);
    one.wait(20);
    await expect(type(one, 'toe', 160)).rejects.toThrow(/See to the probe first/);
    await expect(
      one.desk.plates.addSpot('iron-9', { place: 'toe', readC: 150, thermometerK: 1 }),
    ).rejects.toThrow(/no iron "iron-9"/);
    const cold = bench({ settings: withNewProbe(firstSettings, 'A/1', false) });
    await expect(type(cold, 'toe', 150)).rejects.toThrow(/See to the probe first/);
  });
});

describe('two probes on one plate', () => {
  it('show their spread over whole cycles, and the advice counts the hotter one', async () => {
    const made = bench();
    const board = new FakeSource('A', made.clock);
    made.program.addSource(board);
    board.link('connected');
    const both = (plateC: number): void => {
      board.say(plateC);
      board.say(plateC + 8, { ...emptySample('A/2'), tC: plateC + 8 });
    };
    const to = (fromC: number, toC: number, s: number): void => {
      for (let i = 1; i <= s * 4; i += 1) {
        made.clock.advanceTo(made.clock.nowMs() + 250);
        both(fromC + ((toC - fromC) * i) / (s * 4) - (i % 3) * 0.1);
      }
    };
    to(22, 22, 3);
    const { name, scheduleId } = made.settings.current.irons[0] ?? expect.unreachable();
    await made.settings.change((s) => withIron(s, 'iron-1', { name, scheduleId, probes: ['A/1', 'A/2'] }));
    await made.program.applySettings();
    await made.desk.settings.putPlace('A/2', { kind: 'fitted', spot: 'heel', by: 'clamped' });
    await made.desk.startSession('iron-1', 'start');
    const session = made.program.live().situation.irons[0]?.session ?? '';
    await made.desk.mark(session, { kind: 'place', place: 'on-rest' }, 'rest');
    await made.desk.mark(session, { kind: 'dial', mark: 4 }, 'dial');
    to(22, 162, 120);
    for (let i = 0; i < 6; i += 1) {
      to(162, 138, 60);
      to(138, 162, 30);
    }
    await vi.advanceTimersByTimeAsync(2000);
    const evenness = made.program.live().situation.irons[0]?.evenness;
    expect(evenness).toMatchObject({ by: 'probes', hottest: 'A/2', coldest: 'A/1', lead: 'A/1', count: 2 });
    expect(evenness?.spreadK).toBeCloseTo(8, 1);
    // Two probes that nothing is known of may be far apart by themselves.
    expect(evenness?.offByK).toBeGreaterThan(5);
    const dial = made.desk.dials.dial('iron-1');
    expect(dial.chart.points).toHaveLength(1);
    expect(dial.unevennessK).toBeCloseTo(8, 1);
    expect(made.program.live().probes.map((p) => p.overK)).toEqual([0, 0]);
  });
});
