import { describe, expect, test } from 'vitest';
import {
  type StepRefusal,
  type TimeConstant,
  timeConstantOf,
} from '../../../../shared/thermometer/lag/time-constant.ts';
import { stepRefusalWords } from '../../../../shared/words/lag.ts';
import { plainStep, recordStep } from './steps.ts';

type Record_ = Parameters<typeof timeConstantOf>[0];

function found(record: Record_): TimeConstant {
  const result = timeConstantOf(record);
  if (result.kind !== 'found') throw new Error(JSON.stringify(result.refusal));
  return result.found;
}

function refused(record: Record_): StepRefusal {
  const result = timeConstantOf(record);
  if (result.kind !== 'refused') throw new Error(`found ${result.found.tauS} s`);
  return result.refusal;
}

const near = (t: TimeConstant, tauS: number): void => {
  expect(Math.abs(t.tauS - tauS)).toBeLessThan(4 * t.standardS);
  expect(t.standardS).toBeLessThan(0.05 * tauS);
};

describe('a step is found', () => {
  test('up, as onto a hot plate', () => {
    const t = found(recordStep(plainStep));
    near(t, 2);
    expect(Math.abs(t.onsetMs - 5030)).toBeLessThan(30);
    expect(Math.abs(t.startC - 21)).toBeLessThan(0.1);
    expect(Math.abs(t.endC - 150)).toBeLessThan(0.3);
  });

  test('down, as into melting ice', () => {
    near(found(recordStep({ ...plainStep, startC: 23, endC: 0 })), 2);
  });

  test('of a whole-degree device that sends twice a second', () => {
    near(found(recordStep({ ...plainStep, tauS: 4, lastsS: 50, periodMs: 500, resolutionK: 1 })), 4);
  });

  test('onto a plate that a thermostat keeps moving', () => {
    const endMovesK = (s: number) => 8 * Math.sin(s / 13);
    near(found(recordStep({ ...plainStep, lastsS: 120, endMovesK })), 2);
  });

  test('in a record that was left on for ten minutes', () => {
    near(found(recordStep({ ...plainStep, lastsS: 600, endMovesK: (s) => 6 * Math.sin(s / 15) })), 2);
  });

  test('with readings out of order and some that are no numbers', () => {
    const record = recordStep(plainStep);
    const mixed = [...record.slice(100), { tMs: 3, tC: Number.NaN }, ...record.slice(0, 100)];
    expect(found([...mixed, { tMs: Number.NaN, tC: 20 }])).toEqual(found(record));
  });

  test('on any clock', () => {
    const later = recordStep(plainStep).map((r) => ({ ...r, tMs: r.tMs + 1.8e12 }));
    expect(found(later).tauS).toBeCloseTo(found(recordStep(plainStep)).tauS, 6);
  });

  test('and comes with each reading and what the curve leaves of it', () => {
    const result = timeConstantOf(recordStep(plainStep));
    if (result.kind !== 'found') return expect.unreachable();
    expect(result.curve).toHaveLength(result.found.readings);
    for (const { residualK } of result.curve) expect(Math.abs(residualK)).toBeLessThan(1);
  });
});

describe('what is no step is refused, with what was seen', () => {
  const still = { ...plainStep, endC: plainStep.startC };

  test('nothing, and next to nothing', () => {
    expect(refused([])).toMatchObject({ reason: 'too-few-in-rise', readings: 0 });
    expect(refused(recordStep(plainStep).slice(0, 9))).toMatchObject({ reason: 'too-few-in-rise' });
  });

  test('a probe that was left alone', () => {
    expect(refused(recordStep(still))).toMatchObject({ reason: 'no-step' });
  });

  test('one that came back to where it was', () => {
    const there = recordStep(plainStep);
    const back = recordStep({ ...plainStep, startC: 150, endC: 21, seed: 2 });
    const record = [...there, ...back.map((r) => ({ ...r, tMs: r.tMs + 30_100 }))];
    expect(refused(record)).toMatchObject({ reason: 'no-step' });
  });

  test('a step of a few kelvins in noise', () => {
    const refusal = refused(recordStep({ ...plainStep, endC: 27, noiseK: 0.3 }));
    expect(refusal).toMatchObject({ reason: 'step-too-small', neededK: expect.closeTo(12, -1) });
  });

  test('a record that begins in the middle of it', () => {
    expect(refused(recordStep({ ...plainStep, onsetS: -0.5 }))).toMatchObject({ reason: 'start-not-seen' });
  });

  test('one that ends before the end', () => {
    expect(refused(recordStep({ ...plainStep, lastsS: 10 }))).toMatchObject({ reason: 'end-not-reached' });
    expect(refused(recordStep({ ...plainStep, lastsS: 7 }))).toMatchObject({ reason: 'end-not-reached' });
  });

  test('a slow warming-up', () => {
    const ramp = Array.from({ length: 600 }, (_, i) => ({
      tMs: i * 100,
      tC: 20 + Math.max(0, i - 50) * 0.2,
    }));
    expect(refused(ramp).reason).toMatch(/end-not-reached|not-first-order/);
  });

  test('too few readings in a quick one', () => {
    const refusal = refused(recordStep({ ...plainStep, tauS: 0.6, periodMs: 1000 }));
    expect(refusal).toMatchObject({ reason: 'too-few-in-rise', needed: 5 });
  });

  test('a probe that was moved twice', () => {
    const once = recordStep({ ...plainStep, endC: 90 });
    const twice = once.map((r) => ({ ...r, tC: r.tMs < 8000 ? r.tC : 90 + (r.tC - 90) }));
    const second = recordStep({ ...plainStep, startC: 0, endC: 60, onsetS: 8, resolutionK: 0, noiseK: 0 });
    const record = twice.map((r, i) => ({ ...r, tC: r.tC + (second[i]?.tC ?? 0) }));
    expect(refused(record)).toMatchObject({ reason: 'not-first-order' });
  });
});

describe('in words', () => {
  const refusals: readonly StepRefusal[] = [
    { reason: 'no-step', changeK: 0.2, noiseK: 0.1 },
    { reason: 'step-too-small', changeK: 5, neededK: 12 },
    { reason: 'start-not-seen', readings: 1, needed: 3 },
    { reason: 'too-few-in-rise', readings: 2, needed: 5 },
    { reason: 'end-not-reached', recordedS: 6.2, movingKPerS: 3.4 },
    { reason: 'not-first-order', offK: 6, changeK: 120 },
  ];

  test.each(refusals)('$reason: what was seen, and what to do', (refusal) => {
    const { seen, action } = stepRefusalWords(refusal, (k) => `${k} °C`);
    expect(seen).toMatch(/\d/);
    expect(seen).not.toMatch(/undefined|NaN/);
    expect(action).toMatch(/\.$/);
  });
});
