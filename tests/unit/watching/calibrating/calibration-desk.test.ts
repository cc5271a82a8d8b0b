import { describe, expect, it } from 'vitest';
import { WINDOW_S } from '../../../../shared/calibration/steadiness.ts';
import type { CalibrationAct, ProbeCalibrations } from '../../../../shared/messages/calibration.ts';
import { probeCalibrationsSchema } from '../../../../shared/messages/calibration.ts';
import { procedureRefusals } from '../../../../shared/words/calibrating.ts';
import { bench, FakeSource, foldedAgain, ORIGIN_UTC_MS } from '../support/bench.ts';
import { refused } from '../support/refused.ts';

const PROBE = 'A/1';
/** A window's length, and one second more for its first readings. */
const LONG_S = WINDOW_S + 2;

const limits = (k: number) => ({ k, as: 'limits' }) as const;

function begin() {
  const made = bench();
  const source = new FakeSource('A', made.clock);
  made.program.addSource(source);
  source.link('connected');
  made.heat(source, 20, 1);
  const act = (one: CalibrationAct): Promise<ProbeCalibrations> =>
    made.desk.calibrations.calibrate(PROBE, one, 'C');
  const now = (): ProbeCalibrations =>
    probeCalibrationsSchema.parse(made.desk.calibrations.calibrations(PROBE, 'C'));
  const hold = (tC: number, s = LONG_S): void => {
    made.heat(source, tC, Math.max(1, Math.abs(tC - 20) / 5));
    made.heat(source, tC, s);
  };
  /** Brings the plate there, waits until it is steady, and keeps what the contact thermometer shows. */
  const contact = async (readC: number, plateC: number): Promise<ProbeCalibrations> => {
    await act({ act: 'wait', kind: 'contact' });
    hold(readC);
    const taken = { kind: 'contact', plateC, stated: limits(1.5), instrument: 'bench thermometer' } as const;
    return act({ act: 'keep', taken });
  };
  const heat = (toC: number, s: number): void => made.heat(source, toC, s);
  const wait = (s: number): void => made.wait(s);
  const { desk, clock, shelf } = made;
  return { desk, clock, shelf, heat, wait, act, now, hold, contact };
}

describe('a fitted probe', () => {
  it('is compared at two temperatures: from the begin to a corrected reading with a smaller guard band', async () => {
    const { act, now, hold, contact, desk, clock } = begin();
    hold(150, 2);
    const before = desk.live().probes[0];
    expect(before?.measured).toBe(false);
    expect(now().procedure).toBeNull();
    const { procedure } = await act({ act: 'begin', mounting: 'fitted' });
    expect(procedure).toMatchObject({ kinds: ['contact'], points: [], outcome: null, trouble: '' });
    const one = await contact(150, 154);
    expect(one.procedure?.points).toHaveLength(1);
    // The board says 150, 149.9 and 149.8 in turn: 149.9 on average.
    expect(one.procedure?.points[0]?.readingC).toBeCloseTo(149.9, 1);
    expect(one.procedure?.outcome).toMatchObject({ kind: 'correction', correction: { method: 'offset' } });
    const two = await contact(185, 190);
    const outcome = two.procedure?.outcome;
    if (outcome?.kind !== 'correction') return expect.unreachable(JSON.stringify(outcome));
    expect(outcome.correction.method).toBe('line');
    expect(outcome.residualsK.every((k) => Math.abs(k) < 1e-9)).toBe(true);
    expect(outcome.at.length).toBeGreaterThan(1);
    for (const { guardBandK, inForceK } of outcome.at) expect(guardBandK).toBeLessThan(inForceK);

    const dueUtcMs = ORIGIN_UTC_MS + clock.nowMs() + 86_400_000;
    const saved = await act({ act: 'save', by: 'A. Tester', dueUtcMs });
    expect(saved.procedure).toBeNull();
    expect(saved.versions.map(({ calibration }) => calibration)).toMatchObject([
      { version: 1, by: 'A. Tester', mounting: 'fitted', iron: 'iron-1', probe: PROBE, dueUtcMs },
    ]);
    hold(185, 15);
    const after = desk.live().probes[0];
    expect(after?.measured).toBe(true);
    expect(after?.plateC).toBeCloseTo(190, 0);
    expect(after?.guardBandK).toBeLessThan(before?.guardBandK ?? 0);
    expect(now().budget?.parts.find(({ name }) => name === 'mounting')?.note).toBe('mounting-in-place');
    expect(now().due).toBe(false);
    clock.advanceTo(clock.nowMs() + 90_000_000);
    expect(now().due).toBe(true);
  });

  it('is never taken to water', async () => {
    const { act, now } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    for (const kind of ['ice', 'boiling'] as const) {
      const { because, message } = await refused(act({ act: 'wait', kind }));
      expect([because, message]).toEqual(['invalid', expect.stringContaining('never meet')]);
    }
    expect(now().procedure?.waiting).toBeNull();
  });

  it('that is moved to another iron, or read another way, has to begin anew', async () => {
    const { act, now, contact, desk } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 154);
    const [probe] = desk.settings.probes();
    const { id, ...draft } = probe ?? expect.unreachable();
    await desk.settings.putProbe(id, { ...draft, thermocouple: 'J' });
    expect(now().procedure?.trouble).toBe(procedureRefusals.changed);
    for (const one of [
      { act: 'save', by: '', dueUtcMs: null },
      { act: 'wait', kind: 'contact' },
    ] as const)
      expect(await refused(act(one))).toMatchObject({
        because: 'conflict',
        message: procedureRefusals.changed,
      });
    await desk.settings.putProbe(id, draft);
    expect(now().procedure).toMatchObject({ trouble: '', points: [{ referenceC: 154 }] });
  });
});

describe('a loose probe', () => {
  it('is taken to ice and boiling water; that it jumps on the way is no fault here', async () => {
    const { act, heat, hold } = begin();
    expect((await act({ act: 'begin', mounting: 'loose' })).procedure?.kinds).toEqual([
      'ice',
      'boiling',
      'contact',
    ]);
    await act({ act: 'wait', kind: 'ice' });
    hold(0.5);
    await act({ act: 'keep', taken: { kind: 'ice', instrument: '' } });
    await act({ act: 'wait', kind: 'boiling' });
    heat(95.4, 0.1);
    heat(95.4, LONG_S);
    const facts = { kind: 'boiling', pressureHpa: null, altitudeM: 1500, instrument: '' } as const;
    const { procedure } = await act({ act: 'keep', taken: facts });
    // Reference: ISO 2533 puts 845.6 hPa at 1500 m, under which IAPWS-IF97 has water boil at 95.0 degC.
    expect(procedure?.points[1]).toMatchObject({ altitudeM: 1500, pressureHpa: null });
    expect(procedure?.points[1]?.referenceC).toBeCloseTo(95, 0);
    expect(procedure?.outcome).toMatchObject({ kind: 'correction', correction: { method: 'line' } });
    const saved = await act({ act: 'save', by: '', dueUtcMs: null });
    expect(saved.versions[0]?.calibration).toMatchObject({ mounting: 'loose', iron: null });
  });
});

describe('a loose probe on its way from water to ice', () => {
  it('raises nothing, though it jumps and then holds one value; the session still folds the same', async () => {
    const { act, heat, hold, desk, shelf } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    hold(98);
    heat(0, 0.1);
    heat(0, 25);
    heat(98, 0.1);
    heat(98, 5);
    expect(desk.live().alarms).toEqual([]);
    expect(desk.live().probes[0]).toMatchObject({ quality: 'ok' });
    await act({ act: 'give-up' });
    heat(98, 5);
    // Back on its iron it is judged as ever.
    heat(20, 0.1);
    heat(20, 1);
    expect(desk.live().probes[0]?.quality).toBe('jump');
    const [session] = shelf.sessions.keys();
    await desk.stopSession(session ?? '', 'c2');
    const { stored, replayed } = foldedAgain(shelf, 0);
    expect(stored.length).toBeGreaterThan(0);
    expect(replayed).toEqual(stored);
  });

  it('is judged as ever where it reads more than water can', async () => {
    const { act, heat, hold, desk } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    hold(98);
    heat(175, 0.1);
    heat(175, 1);
    expect(desk.live().probes[0]?.quality).toBe('jump');
  });
});

describe('a point', () => {
  it('is refused while the reading is not steady, with what was seen; waiting goes on', async () => {
    const { act, now, hold, heat } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await act({ act: 'wait', kind: 'contact' });
    hold(150, 1);
    heat(160, 10);
    const taken = { kind: 'contact', plateC: 158, stated: limits(1), instrument: '' } as const;
    const { because, message } = await refused(act({ act: 'keep', taken }));
    expect(because).toBe('invalid');
    expect(message).toMatch(/has held for \d+ of 20 seconds, and drifts by .* a minute/);
    expect(now().procedure).toMatchObject({ points: [], waiting: { kind: 'contact', steady: false } });
    heat(160, LONG_S);
    expect(now().procedure?.waiting).toMatchObject({ steady: true, progress: 1 });
  });

  it('is not steady once readings have stopped coming', async () => {
    const { act, now, hold, wait } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await act({ act: 'wait', kind: 'contact' });
    hold(150);
    expect(now().procedure?.waiting?.steady).toBe(true);
    wait(4);
    expect(now().procedure?.waiting).toMatchObject({ steady: false, progress: 0, readings: 0, meanC: null });
  });

  it('needs what its temperature follows from, and what can be', async () => {
    const { act, now, hold } = begin();
    await act({ act: 'begin', mounting: 'loose' });
    await act({ act: 'wait', kind: 'boiling' });
    hold(99.5);
    const boiling = (pressureHpa: number | null, altitudeM: number | null) =>
      act({ act: 'keep', taken: { kind: 'boiling', pressureHpa, altitudeM, instrument: '' } });
    expect((await refused(boiling(null, null))).message).toContain('Enter the pressure');
    expect((await refused(boiling(1013, 4000))).message).toContain('can’t be the air pressure');
    expect((await refused(boiling(2000, null))).message).toContain('no air pressure');
    expect((await refused(boiling(null, 4000))).message).toContain('Wait until it boils fully');
    const contact = { kind: 'contact', plateC: 99, stated: limits(1), instrument: '' } as const;
    expect((await refused(act({ act: 'keep', taken: contact }))).because).toBe('conflict');
    expect((await boiling(1013, null)).procedure?.points).toHaveLength(1);
    await act({ act: 'wait', kind: 'contact' });
    hold(150);
    const unstated = { ...contact, plateC: 150, stated: null };
    expect((await refused(act({ act: 'keep', taken: unstated }))).message).toContain('Enter its accuracy');
    const far = { ...contact, plateC: 180 };
    expect((await refused(act({ act: 'keep', taken: far }))).message).toContain('At point 2');
    expect(now().procedure?.points).toHaveLength(1);
  });

  it('too close to another is kept, but makes no calibration until one of them is left out', async () => {
    const { act, contact } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 154);
    const { procedure } = await contact(160, 164);
    expect(procedure?.points).toHaveLength(2);
    expect(procedure?.outcome).toMatchObject({
      kind: 'refused',
      seen: expect.stringContaining('lie within'),
    });
    const save = { act: 'save', by: '', dueUtcMs: null } as const;
    expect((await refused(act(save))).message).toContain('apart, or keep one for an offset');
    expect((await refused(act({ act: 'drop', point: 2 }))).because).toBe('unknown');
    expect((await act({ act: 'drop', point: 0 })).procedure?.points).toMatchObject([{ referenceC: 164 }]);
    expect((await act(save)).versions).toHaveLength(1);
  });
});

describe('a procedure', () => {
  it('is one a probe; nothing is done without one', async () => {
    const { act, desk } = begin();
    for (const one of [
      { act: 'wait', kind: 'ice' },
      { act: 'drop', point: 0 },
      { act: 'save', by: '', dueUtcMs: null },
      { act: 'keep', taken: { kind: 'ice', instrument: '' } },
    ] as const)
      expect(await refused(act(one))).toMatchObject({ because: 'conflict', message: procedureRefusals.none });
    await act({ act: 'begin', mounting: 'loose' });
    expect((await refused(act({ act: 'begin', mounting: 'fitted' }))).because).toBe('conflict');
    expect((await refused(act({ act: 'save', by: '', dueUtcMs: null }))).message).toContain('No point');
    expect((await refused(act({ act: 'keep', taken: { kind: 'ice', instrument: '' } }))).because).toBe(
      'conflict',
    );
    expect((await refused(desk.calibrations.calibrate('A/9', { act: 'give-up' }, 'C'))).because).toBe(
      'unknown',
    );
  });

  it('that is given up leaves what was saved before', async () => {
    const { act, contact, hold, desk } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 154);
    await act({ act: 'save', by: 'first', dueUtcMs: null });
    await act({ act: 'begin', mounting: 'fitted' });
    // What was in force does not count: points are of the uncorrected reading.
    expect((await contact(150, 156)).procedure?.points[0]?.readingC).toBeCloseTo(149.9, 1);
    const given = await act({ act: 'give-up' });
    expect(given).toMatchObject({
      procedure: null,
      versions: [{ calibration: { version: 1, by: 'first' } }],
    });
    hold(150, 3);
    expect(desk.live().probes[0]?.plateC).toBeCloseTo(154, 0);
  });

  it('makes the next version beside the earlier one, once, whatever is tapped twice', async () => {
    const { act, contact } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 154);
    await act({ act: 'save', by: 'first', dueUtcMs: null });
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 152);
    const save = { act: 'save', by: 'second', dueUtcMs: null } as const;
    const [kept, doubled] = [act(save), act(save)];
    expect((await refused(doubled)).because).toBe('conflict');
    expect((await kept).versions.map(({ calibration: { version, by } }) => [version, by])).toEqual([
      [2, 'second'],
      [1, 'first'],
    ]);
  });

  it('refuses a due date that has passed, and keeps its points', async () => {
    const { act, contact, now } = begin();
    await act({ act: 'begin', mounting: 'fitted' });
    await contact(150, 154);
    const { because, where } = await refused(act({ act: 'save', by: '', dueUtcMs: ORIGIN_UTC_MS }));
    expect([because, where]).toEqual(['invalid', 'dueUtcMs']);
    expect(now().procedure?.points).toHaveLength(1);
  });
});
