import { describe, expect, test } from 'vitest';
import {
  kindsFor,
  type Reference,
  type ReferenceFacts,
  referenceOf,
  standardUK,
} from '../../../shared/calibration/points.ts';
import { isRefusal } from '../../../shared/calibration/refusals.ts';

function known(facts: ReferenceFacts): Reference {
  const reference = referenceOf(facts);
  if (isRefusal(reference)) throw new Error(`refused: ${reference.reason}`);
  return reference;
}

describe('what each point is worth', () => {
  test('melting ice: 0 degC within our own 0.2 K', () => {
    const { referenceC, referenceUK, parts } = known({ kind: 'ice' });
    expect(referenceC).toBe(0);
    expect(referenceUK).toBeCloseTo(0.2 / Math.sqrt(3), 12);
    expect(parts.map((part) => part.standing)).toEqual(['own-choice']);
  });

  test('boiling water by a pressure is better known than by an altitude alone', () => {
    const byPressure = known({ kind: 'boiling', pressureHpa: 1013.25, altitudeM: null });
    const byAltitude = known({ kind: 'boiling', pressureHpa: null, altitudeM: 0 });
    expect(byPressure.referenceC).toBe(byAltitude.referenceC);
    expect(byAltitude.referenceUK).toBeGreaterThan(1.5 * byPressure.referenceUK);
    // 20 hPa of weather are half a kelvin: 0.028 K a hPa (Clausius-Clapeyron at 100 degC).
    expect(byAltitude.parts[0]?.uK).toBeCloseTo((20 * 0.028) / Math.sqrt(3), 2);
  });

  test('with both, the pressure counts and the altitude checks it', () => {
    const both = known({ kind: 'boiling', pressureHpa: 840, altitudeM: 1600 });
    expect(both).toEqual(known({ kind: 'boiling', pressureHpa: 840, altitudeM: null }));
    expect(referenceOf({ kind: 'boiling', pressureHpa: 1015, altitudeM: 1600 })).toMatchObject({
      reason: 'pressure-not-of-altitude',
      pressureHpa: 1015,
      altitudeM: 1600,
    });
  });

  test('a contact thermometer is as good as the user says, and no better than its contact', () => {
    const { referenceC, referenceUK, parts } = known({
      kind: 'contact',
      plateC: 150,
      stated: { k: 1.5, as: 'limits' },
    });
    expect(referenceC).toBe(150);
    expect(referenceUK).toBeCloseTo(Math.hypot(1.5, 2) / Math.sqrt(3), 12);
    expect(parts.map(({ name, standing }) => [name, standing])).toEqual([
      ['instrument', 'stated'],
      ['joint', 'own-choice'],
    ]);
  });

  test('the three ways in which makers and certificates say it', () => {
    expect(standardUK({ k: 3, as: 'limits' })).toBeCloseTo(Math.sqrt(3), 12);
    expect(standardUK({ k: 3, as: 'expanded' })).toBe(1.5);
    expect(standardUK({ k: 3, as: 'standard' })).toBe(3);
  });
});

describe('what is refused', () => {
  test.each<readonly [string, ReferenceFacts, string]>([
    ['boiling without anything', { kind: 'boiling', pressureHpa: null, altitudeM: null }, 'pressure-missing'],
    [
      'a pressure in another unit',
      { kind: 'boiling', pressureHpa: 29.92, altitudeM: null },
      'pressure-range',
    ],
    [
      'a pressure that is no number',
      { kind: 'boiling', pressureHpa: Number.NaN, altitudeM: null },
      'pressure-range',
    ],
    ['an altitude in feet', { kind: 'boiling', pressureHpa: null, altitudeM: 7200 }, 'altitude-range'],
    [
      'an altitude that is no number',
      { kind: 'boiling', pressureHpa: 1000, altitudeM: Number.NaN },
      'altitude-range',
    ],
    ['a thermometer of unknown worth', { kind: 'contact', plateC: 150, stated: null }, 'uncertainty-missing'],
    [
      'a perfect thermometer',
      { kind: 'contact', plateC: 150, stated: { k: 0, as: 'limits' } },
      'uncertainty-missing',
    ],
    [
      'no temperature',
      { kind: 'contact', plateC: Number.NaN, stated: { k: 1, as: 'limits' } },
      'not-a-number',
    ],
  ])('%s', (_, facts, reason) => {
    expect(referenceOf(facts)).toMatchObject({ reason });
  });
});

test('a fitted probe is offered no water', () => {
  expect(kindsFor('fitted')).toEqual(['contact']);
  expect(kindsFor('loose')).toEqual(['ice', 'boiling', 'contact']);
});
