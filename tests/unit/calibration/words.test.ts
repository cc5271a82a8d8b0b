import { describe, expect, test } from 'vitest';
import type { CalibrationRefusal } from '../../../shared/calibration/refusals.ts';
import { pointWords, refusalText, waterCaution } from '../../../shared/words/calibration.ts';

const pair = { point: 1, other: 0 };
const every: readonly CalibrationRefusal[] = [
  { reason: 'no-points' },
  { reason: 'too-many-points', count: 21, most: 20 },
  { reason: 'not-a-number', point: 0 },
  { reason: 'water-on-fitted', point: null },
  { reason: 'pressure-missing' },
  { reason: 'pressure-range', pressureHpa: 29.92 },
  { reason: 'pressure-not-of-altitude', pressureHpa: 1015, altitudeM: 1600, standardHpa: 835 },
  { reason: 'altitude-range', altitudeM: 7200 },
  { reason: 'uncertainty-missing' },
  { reason: 'water-temperature', point: 0, kind: 'boiling', givenC: 100, possibleC: 94.7 },
  { reason: 'water-reading', point: 0, kind: 'ice', readingC: 15, referenceC: 0 },
  { reason: 'unsteady', point: 0, spreadK: 0.8, boundK: 0.3 },
  { reason: 'few-readings', point: 0, readings: 1 },
  { reason: 'out-of-range', point: 0, tC: 401, minC: -200, maxC: 400 },
  { reason: 'duplicate', ...pair, apartK: 0.4 },
  { reason: 'reversed', ...pair, referenceC: 100, otherReferenceC: 0, readingC: 1, otherReadingC: 99 },
  { reason: 'too-close', spanK: 12 },
  { reason: 'correction-too-large', point: 2, correctionK: -30, boundK: 25 },
  { reason: 'slope-too-large', slope: 0.3 },
];

describe.each(every)('$reason', (refusal) => {
  test.each(['F', 'C'] as const)('says in °%s what was seen and what to do', (unit) => {
    const { seen, action } = refusalText(refusal, unit);
    for (const sentence of [seen, action]) {
      expect(sentence).toMatch(/^[A-Z0-9-].*\.$/u);
      expect(sentence).not.toMatch(/NaN|undefined|null/);
    }
  });
});

test('figures come in the user’s unit, and points are counted from one', () => {
  const water: CalibrationRefusal = {
    reason: 'water-temperature',
    point: 0,
    kind: 'boiling',
    givenC: 100,
    possibleC: 94.7,
  };
  expect(refusalText(water, 'C').seen).toBe(
    'For point 1 100.0 °C was given, but water boils at 94.7 °C there.',
  );
  expect(refusalText(water, 'F').seen).toContain('212.0 °F');
  expect(refusalText({ reason: 'too-close', spanK: 10 }, 'F').action).toContain('54.0 °F');
});

test('both water procedures say first that a mains iron never meets water', () => {
  expect(waterCaution).toMatch(/^A mains iron and water never meet\./);
  for (const kind of ['ice', 'boiling'] as const) expect(pointWords[kind].caution).toContain(waterCaution);
});
