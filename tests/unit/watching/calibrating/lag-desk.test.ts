import { describe, expect, it } from 'vitest';
import { type LagAct, type ProbeLag, probeLagSchema } from '../../../../shared/messages/lag.ts';
import { procedureRefusals } from '../../../../shared/words/calibrating.ts';
import { lagRefusals } from '../../../../shared/words/lag.ts';
import { bench, FakeSource, foldedAgain } from '../support/bench.ts';
import { refused } from '../support/refused.ts';

const PROBE = 'A/1';

function begin() {
  const made = bench();
  const source = new FakeSource('A', made.clock);
  made.program.addSource(source);
  source.link('connected');
  made.heat(source, 22, 1);
  const act = (one: LagAct): Promise<ProbeLag> => made.desk.lags.measureLag(PROBE, one, 'C');
  const now = (): ProbeLag => probeLagSchema.parse(made.desk.lags.lag(PROBE, 'C'));
  let readC = 22;
  /** The probe touches something that is `toC` hot: ten readings a second, or as many as told. */
  const touch = (toC: number, s: number, tauS = 2, everyMs = 100): void => {
    const fromC = readC;
    for (let ms = everyMs; ms <= s * 1000; ms += everyMs) {
      made.clock.advanceTo(made.clock.nowMs() + everyMs);
      readC = toC + (fromC - toC) * Math.exp(-ms / 1000 / tauS);
      // Never still, as no probe is.
      source.say(readC + 0.05 * Math.sin(ms));
    }
  };
  return { ...made, source, act, now, touch };
}

const settled = (): Promise<void> => new Promise((done) => setImmediate(done));

describe('a spring-clipped probe', () => {
  it('is put on a plate at steady heat: from the begin to the time constant in force, without an alarm', async () => {
    const { act, now, touch, desk, settings } = begin();
    expect(now()).toMatchObject({ lag: null, allowanceS: 5, procedure: null });
    expect((await act({ act: 'begin', mounting: 'fitted' })).procedure?.kinds).toEqual(['clip']);
    await act({ act: 'step', kind: 'clip' });
    touch(22, 5);
    expect(now().procedure?.step).toMatchObject({ state: 'resting', sinceS: null });
    touch(22, 20);
    expect(now().procedure?.step).toMatchObject({ state: 'ready', progress: 1 });
    touch(178, 4);
    const settling = now().procedure?.step;
    expect(settling?.state).toBe('settling');
    expect(settling?.sinceS).toBeGreaterThan(3);
    expect(desk.live().alarms).toEqual([]);
    touch(178, 12);
    const { found } = now().procedure?.step ?? {};
    expect(found?.tauS).toBeCloseTo(2, 1);
    expect(found?.standardS).toBeLessThan(0.1);
    const kept = await act({ act: 'keep' });
    expect(kept.procedure).toBeNull();
    expect(kept.lag?.tauS).toBeCloseTo(2, 1);
    expect(settings.current.probes[0]?.lag).toEqual(kept.lag);
    touch(178, 5);
    expect(desk.live().alarms).toEqual([]);
  });

  it('is judged as ever where it passes the limit, and once its step is over', async () => {
    const { act, touch, desk } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await act({ act: 'step', kind: 'clip' });
    touch(22, 25);
    touch(205, 16);
    expect(desk.live().alarms.map(({ kind }) => kind)).toContain('over-limit');
    await settled();
    // Off again at once: now that is what a broken probe does.
    touch(30, 0.4, 0.01);
    expect(desk.live().probes[0]?.quality).toBe('ok');
    touch(160, 0.4, 0.01);
    expect(desk.live().probes[0]?.quality).toBe('jump');
  });

  it('is never plunged into water', async () => {
    const { act } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    expect(await refused(act({ act: 'step', kind: 'plunge' }))).toMatchObject({
      because: 'invalid',
      message: lagRefusals.waterOnFitted,
    });
  });
});

describe('a loose probe', () => {
  it('is plunged into ice, with no alarm, and its session folds the same again', async () => {
    const { act, now, touch, desk, shelf } = begin();
    touch(60, 60, 15);
    await act({ act: 'begin', mounting: 'loose' });
    touch(22, 60, 10);
    await act({ act: 'step', kind: 'plunge' });
    touch(22, 25);
    touch(0.2, 15, 0.9);
    expect(desk.live().alarms).toEqual([]);
    expect(now().procedure?.step?.found?.tauS).toBeCloseTo(0.9, 1);
    await act({ act: 'keep' });
    await settled();
    const [session] = shelf.sessions.keys();
    if (shelf.at(0).length > 0) {
      await desk.stopSession(session ?? '', 'c2').catch(() => undefined);
      const { stored, replayed } = foldedAgain(shelf, 0);
      expect(stored.length).toBeGreaterThan(0);
      expect(replayed).toEqual(stored);
    } else expect.unreachable('no session was kept');
  });
});

describe('a step that tells nothing', () => {
  it('is refused with what was seen and what to do, and can be tried again', async () => {
    const { act, now, touch } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    await act({ act: 'step', kind: 'plunge' });
    touch(22, 5);
    touch(0, 15);
    expect(now().procedure?.step).toMatchObject({
      state: 'refused',
      refused: { seen: expect.stringContaining('not at rest when the step came') },
    });
    expect((await refused(act({ act: 'keep' }))).message).toBe(lagRefusals.nothingToKeep);
    await act({ act: 'step', kind: 'plunge' });
    touch(0, 30);
    const ended = await act({ act: 'stop' });
    expect(ended.procedure?.step).toMatchObject({
      state: 'refused',
      refused: { seen: expect.stringContaining('There is no step in this record') },
    });
    await act({ act: 'step', kind: 'plunge' });
    touch(0, 25);
    touch(70, 20);
    expect(now().procedure?.step?.state).toBe('found');
  });

  it('is lost where the probe is read in another way meanwhile', async () => {
    const { act, now, desk } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    const { id, ...draft } = desk.settings.probes()[0] ?? expect.unreachable();
    await desk.settings.putProbe(id, { ...draft, unit: 'degF' });
    expect(now().procedure?.trouble).toBe(procedureRefusals.changed);
    expect((await refused(act({ act: 'step', kind: 'clip' }))).message).toBe(procedureRefusals.changed);
    expect((await act({ act: 'give-up' })).procedure).toBeNull();
  });
});

describe('the measuring', () => {
  it('is one a probe, and not beside a calibration; nothing is done without one', async () => {
    const { act, desk } = begin();
    for (const one of [{ act: 'step', kind: 'clip' }, { act: 'stop' }, { act: 'keep' }] as const)
      expect((await refused(act(one))).message).toBe(lagRefusals.none);
    await act({ act: 'begin', mounting: 'loose' });
    expect((await refused(act({ act: 'begin', mounting: 'loose' }))).message).toBe(lagRefusals.already);
    expect((await refused(act({ act: 'stop' }))).message).toBe(lagRefusals.noStep);
    const calibrate = desk.calibrations.calibrate(PROBE, { act: 'begin', mounting: 'loose' }, 'C');
    expect((await refused(calibrate)).message).toBe(procedureRefusals.lagUnderWay);
    await act({ act: 'give-up' });
    await desk.calibrations.calibrate(PROBE, { act: 'begin', mounting: 'loose' }, 'C');
    expect((await refused(act({ act: 'begin', mounting: 'loose' }))).message).toBe(lagRefusals.calibrating);
    expect((await refused(desk.lags.measureLag('A/9', { act: 'stop' }, 'C'))).because).toBe('unknown');
  });

  it('that is kept twice is kept once; forgotten, the allowance stands in again', async () => {
    const { act, now, touch, desk } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    await act({ act: 'step', kind: 'plunge' });
    touch(22, 25);
    touch(0, 20);
    const [kept, again] = [act({ act: 'keep' }), act({ act: 'keep' })];
    expect((await refused(again)).message).toBe(lagRefusals.none);
    expect((await kept).lag?.tauS).toBeCloseTo(2, 1);
    const { id, ...draft } = desk.settings.probes()[0] ?? expect.unreachable();
    await desk.settings.putProbe(id, { ...draft, lag: null });
    expect(now().lag).toBeNull();
  });
});
