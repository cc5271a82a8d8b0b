import { describe, expect, test } from 'vitest';
import { beginLag, heardInLag, waitForStep } from '../../../../shared/thermometer/lag/procedure.ts';
import {
  heardInStep,
  STEP_LASTS_MS,
  type StepEnd,
  type StepKind,
  type StepWatch,
  startStep,
  stopStep,
} from '../../../../shared/thermometer/lag/step-watch.ts';
import { stepRefusalWords } from '../../../../shared/words/lag.ts';
import { plainStep, recordStep, type SimulatedStep } from './steps.ts';

/** A probe that rests in the air for 25 s before its step. */
const rested: SimulatedStep = { ...plainStep, onsetS: 25.03, lastsS: 80 };
const START_MS = 5000;

function follow(step: SimulatedStep, kind: StepKind = 'clip', deviceMs = false): StepWatch {
  let watch = startStep(kind, START_MS);
  for (const { tMs, tC } of recordStep(step)) {
    // A host that hands on ten lines at once, of a device whose own clock knows better.
    const arrivesMs = deviceMs ? Math.ceil(tMs / 1000) * 1000 : tMs;
    watch = heardInStep(watch, {
      tMs: START_MS + arrivesMs,
      deviceMs: deviceMs ? 77_000 + tMs : null,
      readC: tC,
    });
    if (watch.end !== null) break;
  }
  return watch;
}

const tauOf = (end: StepEnd | null): number =>
  end?.kind === 'found' ? end.found.tauS : expect.unreachable(JSON.stringify(end));

const refusalOf = (end: StepEnd | null) =>
  end?.kind === 'refused' ? end.refusal : expect.unreachable(JSON.stringify(end));

describe('a step', () => {
  test('onto a plate: at rest, stepped, settled and found by itself', () => {
    const watch = follow(rested);
    expect(watch.rest?.meanC).toBeCloseTo(21, 0);
    expect(Math.abs((watch.steppedMs ?? 0) - START_MS - 25_030)).toBeLessThan(500);
    expect(tauOf(watch.end)).toBeCloseTo(2, 1);
    // Six time constants, and up to a second until it is looked at.
    const lastedMs = (watch.record.at(-1)?.tMs ?? 0) - (watch.steppedMs ?? 0);
    expect(lastedMs).toBeGreaterThanOrEqual(11_900);
    expect(lastedMs).toBeLessThan(14_000);
  });

  test('into ice, and into warm water', () => {
    expect(tauOf(follow({ ...rested, endC: 0, tauS: 1.2 }, 'plunge').end)).toBeCloseTo(1.2, 1);
    expect(tauOf(follow({ ...rested, endC: 60, tauS: 5 }, 'plunge').end)).toBeCloseTo(5, 0);
  });

  test('is timed by the device’s own clock, however its lines arrive', () => {
    expect(tauOf(follow(rested, 'clip', true).end)).toBeCloseTo(2, 1);
  });

  test('onto a plate whose thermostat keeps moving it', () => {
    const watch = follow({ ...rested, lastsS: 120, endMovesK: (s) => 6 * Math.sin(s / 20) });
    expect(tauOf(watch.end)).toBeCloseTo(2, 0);
  });

  test('survives JSON at any point of it', () => {
    let [kept, plain] = [startStep('plunge', 0), startStep('plunge', 0)];
    for (const { tMs, tC } of recordStep({ ...rested, endC: 0 })) {
      const heard = { tMs, deviceMs: tMs, readC: tC };
      plain = heardInStep(plain, heard);
      kept = heardInStep(JSON.parse(JSON.stringify(kept)), heard);
    }
    expect(kept).toEqual(plain);
    expect(plain.end?.kind).toBe('found');
  });
});

describe('is refused', () => {
  test('where it came before the probe was at rest', () => {
    const watch = follow({ ...rested, onsetS: 6 });
    expect(refusalOf(watch.end)).toMatchObject({ reason: 'start-not-steady' });
    const { seen, action } = stepRefusalWords(refusalOf(watch.end), (k) => `${k.toFixed(1)} K`);
    expect(seen).toMatch(/not at rest when the step came/);
    expect(action).toMatch(/until it is shown as at rest/);
  });

  test('where it was ended without a step, or with too small a one', () => {
    const still = stopStep(follow({ ...rested, endC: 21 }));
    expect(refusalOf(still.end).reason).toBe('no-step');
    const small = stopStep(follow({ ...rested, endC: 27.5 }));
    expect(small.steppedMs).not.toBeNull();
    expect(refusalOf(small.end).reason).toBe('step-too-small');
  });

  test('where it was ended before it had settled, or with next to no reading', () => {
    const unsettled = stopStep(follow({ ...rested, lastsS: 28 }));
    expect(refusalOf(unsettled.end).reason).toBe('end-not-reached');
    expect(refusalOf(stopStep(startStep('clip', 0)).end)).toMatchObject({ reason: 'too-few-in-rise' });
  });

  test('where the device sends too seldom for it', () => {
    const watch = follow({ ...rested, tauS: 0.7, periodMs: 1000 });
    expect(refusalOf(watch.end).reason).toBe('too-few-in-rise');
  });

  test('where its end never came to rest', () => {
    const watch = follow({ ...rested, endMovesK: (s) => 6 * s });
    expect(watch.end).toBeNull();
    expect(refusalOf(stopStep(watch).end).reason).toBe('end-not-reached');
  });

  test('where a record has a step that was never waited for at rest', () => {
    // Too slow to be told as a step at once, and never at rest before it.
    let watch = startStep('clip', 0);
    const record = recordStep({
      ...plainStep,
      tauS: 9,
      endC: 45,
      onsetS: 8,
      lastsS: 55,
      resolutionK: 0.05,
    });
    for (const { tMs, tC } of record) watch = heardInStep(watch, { tMs, deviceMs: null, readC: tC });
    expect(watch.steppedMs).toBeNull();
    expect(refusalOf(stopStep(watch).end).reason).toBe('start-not-steady');
  });

  test('where nothing has happened for as long as it may last', () => {
    let watch = startStep('clip', 0);
    for (let tMs = 0; tMs <= STEP_LASTS_MS + 1000; tMs += 500)
      watch = heardInStep(watch, { tMs, deviceMs: null, readC: 21 + (tMs % 1000) / 5000 });
    expect(refusalOf(watch.end).reason).toBe('no-step');
    expect(watch.record.length).toBeLessThan(200);
  });
});

describe('a procedure', () => {
  const made = { thermocouple: 'K', unit: 'degC', iron: 'iron-1' } as const;

  test('lets a loose probe be plunged, and never one of an iron', () => {
    expect(waitForStep(beginLag('loose', made), 'plunge', 0)?.step?.kind).toBe('plunge');
    expect(waitForStep(beginLag('fitted', made), 'plunge', 0)).toBeNull();
    expect(waitForStep(beginLag('fitted', made), 'clip', 0)?.step?.kind).toBe('clip');
  });

  test('hears nothing between steps', () => {
    const begun = beginLag('loose', made);
    expect(heardInLag(begun, { tMs: 0, deviceMs: null, readC: 20 })).toBe(begun);
  });
});
