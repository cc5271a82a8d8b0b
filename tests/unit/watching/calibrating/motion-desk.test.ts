import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../../daemon/refusal.ts';
import { probeMotionSchema } from '../../../../shared/messages/motion.ts';
import { lagRefusals } from '../../../../shared/words/lag.ts';
import { trialRefusals } from '../../../../shared/words/motion.ts';
import { bench, FakeSource } from '../support/bench.ts';

const PROBE = 'A/1';

function begin() {
  const made = bench();
  const source = new FakeSource('A', made.clock);
  made.program.addSource(source);
  source.link('connected');
  made.heat(source, 22, 1);
  const now = () => probeMotionSchema.parse(made.desk.motions.motion(PROBE));
  /** Ten lines a second that say this much motion, g; null: none at all. */
  const say = (g: number | null, s: number): void => {
    for (let line = 1; line <= s * 10; line += 1) {
      made.clock.advanceTo(made.clock.nowMs() + 100);
      source.say(22 - (line % 3) * 0.1, { motionG: g === null ? null : g * (1 + (line % 5) / 10) });
    }
  };
  return { ...made, source, now, say };
}

const settled = (): Promise<void> => new Promise((done) => setImmediate(done));

const refusal = (ask: () => unknown): string => {
  try {
    ask();
  } catch (error) {
    return error instanceof Refusal ? error.message : expect.unreachable(String(error));
  }
  return expect.unreachable('it was taken');
};

describe('the check of still and moving', () => {
  it('is led, and what it finds is kept by itself, with the probe’s other settings', async () => {
    const { desk, now, say, settings } = begin();
    expect(now()).toMatchObject({ check: null, onLine: false, trial: null });
    desk.motions.begin(PROBE);
    expect(now().trial).toEqual({ asks: 'let-stand', leftS: 6.5, refused: null, trouble: '' });
    expect(refusal(() => desk.motions.begin(PROBE))).toBe(trialRefusals.already);
    say(0.01, 6.5);
    expect(now()).toMatchObject({ onLine: true, trial: { asks: 'move', leftS: 7.5 } });
    say(0.4, 7.6);
    await settled();
    const { check, trial } = now();
    expect(trial).toBeNull();
    expect(check?.stillG).toBeGreaterThan(0.014);
    expect(check?.movingG).toBeLessThan(0.4);
    expect(settings.current.probes[0]?.motion).toEqual(check);
    await desk.settings.putProbe(PROBE, { label: 'toe', thermocouple: 'K', unit: 'degC' });
    expect(now().check).toEqual(check);
    await desk.settings.putProbe(PROBE, { label: 'toe', thermocouple: 'K', unit: 'degC', motion: null });
    expect(now().check).toBeNull();
  });

  it('says why it came to nothing, keeps what was kept before, and can be made again', async () => {
    const { desk, now, say } = begin();
    desk.motions.begin(PROBE);
    say(0.01, 6.5);
    say(0.4, 8);
    await settled();
    const { check } = now();
    desk.motions.begin(PROBE);
    say(0.3, 6.5);
    say(0.4, 8);
    await settled();
    expect(now()).toMatchObject({ check, trial: { asks: 'nothing', refused: 'not-still' } });
    desk.motions.begin(PROBE);
    expect(now().trial).toMatchObject({ asks: 'let-stand', refused: null });
    desk.motions.giveUp(PROBE);
    expect(now()).toMatchObject({ check, trial: null });
  });

  it('ends on a line without motion, and on one that falls silent', () => {
    const { desk, now, say, clock } = begin();
    desk.motions.begin(PROBE);
    say(null, 14.5);
    expect(now().trial).toMatchObject({ asks: 'nothing', refused: 'no-value' });
    desk.motions.begin(PROBE);
    clock.advanceTo(clock.nowMs() + 15_000);
    expect(now().trial).toMatchObject({ asks: 'nothing', refused: 'no-value' });
    expect(now().onLine).toBe(false);
  });

  it('says so where what it found can’t be written', async () => {
    const { desk, now, say, settings } = begin();
    settings.change = () => Promise.reject(new Refusal('conflict', 'The disk is full.'));
    desk.motions.begin(PROBE);
    say(0.01, 6.5);
    say(0.4, 8);
    await settled();
    expect(now()).toMatchObject({ check: null, trial: { asks: 'nothing', trouble: 'The disk is full.' } });
  });

  it('waits for another procedure with this probe, and knows its probes', async () => {
    const { desk } = begin();
    await desk.lags.measureLag(PROBE, { act: 'begin', mounting: 'fitted' }, 'C');
    expect(refusal(() => desk.motions.begin(PROBE))).toBe(trialRefusals.measuringLag);
    await desk.lags.measureLag(PROBE, { act: 'give-up' }, 'C');
    await desk.calibrations.calibrate(PROBE, { act: 'begin', mounting: 'fitted' }, 'C');
    expect(refusal(() => desk.motions.begin(PROBE))).toBe(lagRefusals.calibrating);
    expect(refusal(() => desk.motions.motion('A/9'))).toContain('A/9');
  });
});
