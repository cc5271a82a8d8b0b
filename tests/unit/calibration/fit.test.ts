import { describe, expect, test } from 'vitest';
import type { CalibrationPoint } from '../../../shared/calibration/calibration.ts';
import {
  corrected,
  correctionAtK,
  correctionUK,
  UNKNOWN_SLOPE,
} from '../../../shared/calibration/correction.ts';
import { fitCorrection, residualsK } from '../../../shared/calibration/fit.ts';
import { boilingPoint, contactPoint, fit, fittedProbe, icePoint, loose } from './points.ts';

describe('one point: an offset', () => {
  const correction = fit([icePoint(1.5)], loose);

  test('is taken off everywhere', () => {
    expect(correction).toMatchObject({ method: 'offset', b2: 0, sK: null, fromC: 1.5, toC: 1.5 });
    expect(corrected(1.5, correction)).toBe(0);
    expect(corrected(181.5, correction)).toBe(180);
  });

  test('is as uncertain as its reference and its reading, and more with each K away from it', () => {
    const atPointK = Math.hypot(0.1, 0.05);
    expect(correctionUK(correction, 1.5)).toBeCloseTo(atPointK, 12);
    expect(correctionUK(correction, 181.5)).toBeCloseTo(Math.hypot(atPointK, UNKNOWN_SLOPE * 180), 12);
    expect(correctionUK(correction, -38.5)).toBeCloseTo(Math.hypot(atPointK, UNKNOWN_SLOPE * 40), 12);
  });

  test('a coarse step counts, even where the reading stood still', () => {
    const coarse = fit([icePoint(1, { readingSpreadK: 0, resolutionK: 1 })], loose);
    expect(correctionUK(coarse, 1)).toBeCloseTo(Math.hypot(0.1, 1 / Math.sqrt(12)), 12);
  });
});

describe('two points: the line through them', () => {
  const correction = fit([boilingPoint(97.974), icePoint(-1)], loose);

  test('makes both exact, and goes on straight', () => {
    expect(correction.method).toBe('line');
    expect(corrected(-1, correction)).toBeCloseTo(0, 12);
    expect(corrected(97.974, correction)).toBeCloseTo(99.974, 12);
    expect(correctionAtK(correction, 97.974 + 98.974)).toBeCloseTo(3, 9);
  });

  test('is at each as uncertain as the point itself', () => {
    expect(correctionUK(correction, -1)).toBeCloseTo(Math.hypot(0.1, 0.05), 12);
    expect(correctionUK(correction, 97.974)).toBeCloseTo(Math.hypot(0.2, 0.05), 12);
  });

  test('beyond them it is more so, by the line and by what nobody looked at', () => {
    const outC = 97.974 + 98.974;
    const lineK = Math.hypot(2 * Math.hypot(0.2, 0.05), Math.hypot(0.1, 0.05));
    expect(correctionUK(correction, outC)).toBeCloseTo(Math.hypot(lineK, UNKNOWN_SLOPE * 98.974), 9);
  });

  test('points by one instrument are wrong together: half-way is no better than at either', () => {
    const one = fit([contactPoint(118, 120), contactPoint(178, 180)], fittedProbe);
    expect(correctionUK(one, 148)).toBeCloseTo(Math.hypot(1, 0.05 / Math.SQRT2), 9);
    const two = fit([contactPoint(118, 120), contactPoint(178, 180, { instrument: 'another' })], fittedProbe);
    expect(correctionUK(two, 148)).toBeCloseTo(Math.hypot(1, 0.05) / Math.SQRT2, 9);
  });
});

describe('three points and more: least squares', () => {
  const points = [contactPoint(98, 100.3), contactPoint(138, 139.7), contactPoint(178, 180.3)];
  const correction = fit(points, fittedProbe);

  test('leaves residuals that sum to nothing, and says how large they are', () => {
    const left = residualsK(points, correction);
    expect(left.map((k) => Number(k.toFixed(6)))).toEqual([0.2, -0.4, 0.2]);
    expect(correction.method).toBe('least-squares');
    expect(correction.sK).toBeCloseTo(Math.sqrt(0.04 + 0.16 + 0.04), 9);
  });

  test('counts their scatter where it is larger than their own spread', () => {
    const sK = Math.sqrt(0.24);
    expect(correctionUK(correction, 138)).toBeCloseTo(Math.hypot(1, sK / Math.sqrt(3)), 9);
  });
});

describe('what is refused', () => {
  const cases: readonly (readonly [string, readonly CalibrationPoint[], typeof loose, object])[] = [
    ['nothing', [], loose, { reason: 'no-points' }],
    [
      'more points than anyone takes',
      Array.from({ length: 21 }, () => icePoint(0)),
      loose,
      { reason: 'too-many-points', count: 21, most: 20 },
    ],
    [
      'water on a fitted probe',
      [contactPoint(150, 151), icePoint(0)],
      fittedProbe,
      { reason: 'water-on-fitted', point: 1 },
    ],
    ['no number', [icePoint(Number.NaN)], loose, { reason: 'not-a-number', point: 0 }],
    [
      'a figure whose square is none',
      [icePoint(0, { referenceUK: 1e200 })],
      loose,
      { reason: 'not-a-number', point: 0 },
    ],
    [
      'a single reading',
      [icePoint(0, { readings: 1 })],
      loose,
      { reason: 'few-readings', point: 0, readings: 1 },
    ],
    [
      'an unsteady reading',
      [icePoint(0, { readingSpreadK: 0.4 })],
      loose,
      { reason: 'unsteady', point: 0, spreadK: 0.4, boundK: 0.3 },
    ],
    [
      'beyond the type',
      [contactPoint(396, 401)],
      { mounting: 'loose', thermocouple: 'T' },
      { reason: 'out-of-range', point: 0, tC: 401, minC: -200, maxC: 400 },
    ],
    [
      'boiling at sea-level heat, high up',
      [boilingPoint(99, { pressureHpa: null, altitudeM: 1600 })],
      loose,
      { reason: 'water-temperature', kind: 'boiling', givenC: 99.974 },
    ],
    [
      'ice that is not at 0',
      [icePoint(2, { referenceC: 2 })],
      loose,
      { reason: 'water-temperature', kind: 'ice', givenC: 2, possibleC: 0 },
    ],
    [
      'boiling water without pressure',
      [boilingPoint(99, { pressureHpa: null })],
      loose,
      { reason: 'pressure-missing' },
    ],
    [
      'water that does not boil',
      [boilingPoint(82)],
      loose,
      { reason: 'water-reading', point: 0, readingC: 82 },
    ],
    ['the same point twice', [icePoint(0.4), icePoint(0.5)], loose, { reason: 'duplicate', apartK: 0 }],
    [
      'exchanged points',
      [icePoint(99), boilingPoint(1)],
      loose,
      { reason: 'reversed', referenceC: 99.974, readingC: 1, otherReadingC: 99 },
    ],
    [
      'points close together',
      [contactPoint(150, 151), contactPoint(179, 180)],
      fittedProbe,
      { reason: 'too-close', spanK: 29 },
    ],
    [
      'far off, loose',
      [contactPoint(150, 161)],
      loose,
      { reason: 'correction-too-large', correctionK: 11, boundK: 10 },
    ],
    [
      'far off, fitted',
      [contactPoint(150, 176)],
      fittedProbe,
      { reason: 'correction-too-large', correctionK: 26, boundK: 25 },
    ],
    [
      'a steep line',
      [contactPoint(110, 100), contactPoint(141, 150)],
      fittedProbe,
      { reason: 'slope-too-large' },
    ],
  ];

  test.each(cases)('%s', (_, points, probe, refusal) => {
    expect(fitCorrection(points, probe)).toMatchObject(refusal);
  });

  test('a coarse probe may flicker by its own step', () => {
    const flickering = icePoint(0.5, { readingSpreadK: 0.5, resolutionK: 1 });
    expect(fitCorrection([flickering], loose)).toMatchObject({ method: 'offset' });
  });

  test('a fitted probe reads low by its mounting: 15 K is taken, of a loose one it is not', () => {
    const point = contactPoint(150, 165);
    expect(fitCorrection([point], fittedProbe)).toMatchObject({ b1K: 15 });
    expect(fitCorrection([point], loose)).toMatchObject({ reason: 'correction-too-large' });
  });
});
