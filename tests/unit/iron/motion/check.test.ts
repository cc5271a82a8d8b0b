import { describe, expect, it } from 'vitest';
import { judgeMotion, motionCheckSchema, motionRefusals } from '../../../../shared/iron/motion/check.ts';
import {
  heardInTrial,
  type MotionTrial,
  startTrial,
  trialAsks,
  trialLeftMs,
} from '../../../../shared/iron/motion/trial.ts';
import { motionRefusalWords } from '../../../../shared/words/motion.ts';

const five = (g: number) => [g, g * 1.1, g * 0.9, g, g];
const reasonOf = (still: readonly number[], moved: readonly number[]) => {
  const judged = judgeMotion(still, moved);
  return judged.kind === 'refused' ? judged.reason : 'found';
};

describe('the levels of still and moving', () => {
  it('cut the way from the one to the other into equal ratios', () => {
    const judged = judgeMotion([0.01, 0.01, 0.01, 0.01, 0.01], [0.08, 0.08, 0.08, 0.08, 0.08]);
    if (judged.kind === 'refused') return expect.unreachable();
    // The cube root of 8 is 2: 0.01, 0.02, 0.04, 0.08.
    expect(judged.levels.stillG).toBeCloseTo(0.02, 10);
    expect(judged.levels.movingG).toBeCloseTo(0.04, 10);
  });

  it('bear a knock at rest and a pause while moved', () => {
    const still = [...Array.from({ length: 20 }, () => 0.005), 0.2];
    const moved = [0.004, 0.005, ...Array.from({ length: 10 }, () => 0.06)];
    expect(reasonOf(still, moved)).toBe('found');
  });

  it('hold for a sensor that reads nothing at all at rest', () => {
    const judged = judgeMotion([0, 0, 0, 0, 0], five(0.05));
    expect(judged).toMatchObject({ kind: 'found' });
    if (judged.kind === 'found') expect(judged.levels.stillG).toBeGreaterThan(0.001);
  });

  it.each([
    ['no-value', [], []],
    ['no-value', five(0.004), []],
    ['too-seldom', [0.004, 0.004, 0.004], five(0.1)],
    ['gravity', five(1), five(1.1)],
    ['not-still', five(0.15), five(0.2)],
    ['no-difference', five(0.02), five(0.03)],
    ['no-difference', five(0.05), five(0.01)],
  ] as const)('are refused: %s', (reason, still, moved) => {
    expect(reasonOf(still, moved)).toBe(reason);
  });

  it('say of each refusal what is wrong', () => {
    for (const reason of motionRefusals) expect(motionRefusalWords[reason]).toMatch(/\.$/);
  });

  it('are kept only where still is under moving', () => {
    const check = { stillG: 0.02, movingG: 0.05, checkedAt: '2026-03-04T13:20:00Z' };
    expect(motionCheckSchema.safeParse(check).success).toBe(true);
    expect(motionCheckSchema.safeParse({ ...check, stillG: 0.05 }).success).toBe(false);
  });
});

describe('the check as it is led', () => {
  const led = (read: (sinceMs: number) => number | null, untilMs = 16_000): MotionTrial => {
    let trial = startTrial(1000);
    for (let ms = 0; ms <= untilMs; ms += 200) trial = heardInTrial(trial, 1000 + ms, read(ms));
    return trial;
  };
  const moves = (ms: number): number => (ms < 7000 ? 0.004 : 0.08);

  it('asks to let it stand, then to move it, and says how long', () => {
    const trial = startTrial(1000);
    expect(trialAsks(trial, 1000)).toBe('let-stand');
    expect(trialLeftMs(trial, 2000)).toBe(5500);
    expect(trialAsks(trial, 7500)).toBe('move');
    expect(trialLeftMs(trial, 7500)).toBe(7500);
    expect(trialAsks(led(moves), 17_000)).toBe('nothing');
  });

  it('finds the levels from five seconds of each, and what the hand does between counts for nothing', () => {
    const shaken = led((ms) => (ms < 1000 || (ms > 6600 && ms < 8900) ? 0.6 : moves(ms)));
    expect(shaken.end).toEqual(led(moves).end);
    expect(shaken.still).toHaveLength(25);
    expect(shaken.end).toMatchObject({ kind: 'found' });
    expect(JSON.parse(JSON.stringify(shaken))).toEqual(shaken);
  });

  it('ends in words where the line carries nothing, and where nobody moves it', () => {
    expect(led(() => null).end).toEqual({ kind: 'refused', reason: 'no-value' });
    expect(led(() => 0.004).end).toEqual({ kind: 'refused', reason: 'no-difference' });
    expect(led(() => Number.NaN).end).toEqual({ kind: 'refused', reason: 'no-value' });
  });
});
