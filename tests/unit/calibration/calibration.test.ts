import { describe, expect, test } from 'vitest';
import {
  calibrationSchema,
  currentCalibration,
  isDue,
  isMadeInPlace,
  nextCalibrationVersion,
} from '../../../shared/calibration/calibration.ts';
import { boilingPoint, calibration, contactPoint, fittedProbe, icePoint, loose } from './points.ts';

const sound = calibration([icePoint(0.5), boilingPoint(99)], loose);

describe('the schema', () => {
  test('takes a sound calibration, through JSON, as it is', () => {
    expect(calibrationSchema.parse(JSON.parse(JSON.stringify(sound)))).toEqual(sound);
  });

  test('names water on a fitted probe, and where', () => {
    const { error } = calibrationSchema.safeParse({ ...sound, mounting: 'fitted' });
    expect(error?.issues[0]).toMatchObject({ path: ['points', 0, 'kind'] });
    expect(error?.issues[0]?.message).toContain('never meets water');
  });

  test.each([
    ['no points', { points: [] }],
    ['a probe without a device', { probe: '1' }],
    ['a point with no uncertainty', { points: [icePoint(0.5, { referenceUK: 0 })] }],
    ['a falling correction', { correction: { ...sound.correction, b2: -1 } }],
    ['a span from high to low', { correction: { ...sound.correction, fromC: 99, toC: 1 } }],
    ['an unknown key', { colour: 'red' }],
  ])('refuses %s', (_, change) => {
    expect(calibrationSchema.safeParse({ ...sound, ...change }).success).toBe(false);
  });
});

test('it is due from its date on, and never without one', () => {
  expect(isDue({ dueUtcMs: null }, 9e15)).toBe(false);
  expect(isDue({ dueUtcMs: 1000 }, 999)).toBe(false);
  expect(isDue({ dueUtcMs: 1000 }, 1000)).toBe(true);
});

test('a later version supersedes; other probes’ don’t', () => {
  const later = { ...sound, id: 'demo-2', version: 2 };
  const other = { ...sound, id: 'demo-3', version: 7, probe: 'demo/2' };
  expect(currentCalibration([sound, later, other], 'demo/1')).toBe(later);
  expect(currentCalibration([later, sound, other], 'demo/1')).toBe(later);
  expect(currentCalibration([other], 'demo/1')).toBeNull();
  expect([
    nextCalibrationVersion([sound, later, other], 'demo/1'),
    nextCalibrationVersion([], 'demo/1'),
  ]).toEqual([3, 1]);
});

test('its mounting is in it where it was made fitted', () => {
  const inPlace = calibration([contactPoint(150, 155)], fittedProbe);
  expect(isMadeInPlace(sound, 'big')).toBe(false);
  expect(isMadeInPlace(inPlace, 'big')).toBe(true);
  expect(isMadeInPlace(inPlace, 'another')).toBe(false);
});
