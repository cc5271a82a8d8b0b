import { describe, expect, test } from 'vitest';
import { correctionUK } from '../../../shared/calibration/correction.ts';
import {
  BOARD_LEFT_K,
  BOARD_LIMIT_K,
  type Budget,
  type BudgetFacts,
  budget,
  MOUNTING_LIMIT_K,
  type PartName,
} from '../../../shared/thermometer/uncertainty.ts';
import { contactPoint, fit, fittedProbe } from './points.ts';

const nothingKnown: BudgetFacts = {
  readingC: 180,
  thermocouple: 'K',
  toleranceClass: 'astm-standard',
  calibration: null,
  resolutionK: 0.25,
  mountingK: null,
  lagUK: 0,
  unevenness: null,
  confidence: 0.95,
};
const correction = fit([contactPoint(118, 120), contactPoint(178, 180)], fittedProbe);
const inPlace: BudgetFacts = { ...nothingKnown, readingC: 150, calibration: { correction, inPlace: true } };

const part = (of: Budget, name: PartName) => of.parts.find((one) => one.name === name);
const SQRT3 = Math.sqrt(3);

describe('where nothing is known', () => {
  const of = budget(nothingKnown);

  test('tolerance, board and mounting stand in, each over the root of 3, and are marked so', () => {
    expect(part(of, 'wire')).toEqual({ name: 'wire', uK: 2.2 / SQRT3, standing: 'tolerance', note: 'class' });
    expect(part(of, 'cold-junction')).toMatchObject({
      uK: BOARD_LIMIT_K / SQRT3,
      standing: 'stated',
      note: 'board',
    });
    expect(part(of, 'mounting')).toMatchObject({ uK: MOUNTING_LIMIT_K / SQRT3, note: 'mounting-allowed' });
    expect(part(of, 'resolution')).toMatchObject({ uK: 0.25 / Math.sqrt(12), standing: 'measured' });
    expect(of.allowanceOnly).toBe(true);
  });

  test('they combine by root sum of squares, and the guard band is 1.645 of that', () => {
    const uK = Math.sqrt((2.2 ** 2 + 1 ** 2 + 3 ** 2) / 3 + 0.25 ** 2 / 12);
    expect(of.uK).toBeCloseTo(uK, 12);
    expect(of.guardBandK).toBeCloseTo(1.6448536 * uK, 6);
  });

  test('the tolerance grows with the temperature where its share counts', () => {
    expect(part(budget({ ...nothingKnown, readingC: 320 }), 'wire')?.uK).toBeCloseTo(
      (0.0075 * 320) / SQRT3,
      12,
    );
  });

  test('where the class gives none, the widest usual one does', () => {
    const cold = budget({ ...nothingKnown, thermocouple: 'J', readingC: -10 });
    expect(part(cold, 'wire')).toMatchObject({ uK: 2.5 / SQRT3, note: 'class-outside' });
  });

  test('a mounting that the user states is taken, and a step that was never seen adds nothing', () => {
    const stated = budget({ ...nothingKnown, mountingK: 1, resolutionK: null });
    expect(part(stated, 'mounting')).toMatchObject({ uK: 1 / SQRT3, note: 'mounting-stated' });
    expect(part(stated, 'resolution')).toMatchObject({ uK: 0, note: 'step-unknown' });
  });
});

describe('with a calibration', () => {
  test('made in place: no tolerance and no mounting are left', () => {
    const of = budget(inPlace);
    expect(of.parts.map(({ name }) => name)).toEqual([
      'calibration',
      'resolution',
      'cold-junction',
      'mounting',
      'lag',
    ]);
    expect(part(of, 'calibration')).toMatchObject({ uK: correctionUK(correction, 150), note: 'calibrated' });
    expect(part(of, 'mounting')).toMatchObject({ uK: 0, note: 'mounting-in-place' });
    expect(part(of, 'cold-junction')?.uK).toBeCloseTo(BOARD_LEFT_K / SQRT3, 12);
    expect(of.allowanceOnly).toBe(false);
    expect(of.guardBandK).toBeLessThan(budget(nothingKnown).guardBandK);
  });

  test('made elsewhere: the mounting is still an allowance', () => {
    const elsewhere = budget({ ...inPlace, calibration: { correction, inPlace: false } });
    expect(part(elsewhere, 'mounting')).toMatchObject({ note: 'mounting-allowed' });
  });

  test('beyond its points it says so', () => {
    expect(part(budget({ ...inPlace, readingC: 200 }), 'calibration')?.note).toBe('calibrated-outside');
  });
});

test('lag widens it while the plate moves', () => {
  const moving = budget({ ...inPlace, lagUK: 4 });
  expect(part(moving, 'lag')).toMatchObject({ uK: 4, note: 'moving' });
  expect(moving.uK).toBeCloseTo(Math.hypot(budget(inPlace).uK, 4), 12);
});

test('more confidence, wider guard', () => {
  const bands = ([0.8, 0.9, 0.95, 0.975, 0.99] as const).map(
    (confidence) => budget({ ...inPlace, confidence }).guardBandK,
  );
  expect(bands).toEqual([...bands].sort((a, b) => a - b));
});

test('it survives JSON', () => {
  const of = budget(inPlace);
  expect(JSON.parse(JSON.stringify(of))).toEqual(of);
});
