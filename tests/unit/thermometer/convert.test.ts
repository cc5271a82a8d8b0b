import { describe, expect, test } from 'vitest';
import { emfUv } from '../../../shared/thermocouple/thermocouple.ts';
import { temperatureOf } from '../../../shared/thermometer/convert.ts';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import { probeSettings, reads } from '../watch/support/settings.ts';

const own = probeSettings();
const emf = (uv: number | null, cjC: number | null) => ({
  ...emptySample('board/1'),
  emfUv: uv,
  coldJunctionC: cjC,
});

describe('a sample becomes a temperature or a named fault', () => {
  test('what the device linearised is taken as it is', () => {
    expect(temperatureOf(reads(150.25), own)).toBe(150.25);
  });

  test('in the unit that the user settled', () => {
    expect(temperatureOf(reads(350), probeSettings('board/1', { unit: 'degF' }))).toBeCloseTo(176.667, 3);
  });

  test('an emf is linearised with its cold junction', () => {
    const terminalUv = (emfUv('K', 150) ?? 0) - (emfUv('K', 25) ?? 0);
    expect(temperatureOf(emf(terminalUv, 25), own)).toBeCloseTo(150, 3);
  });

  test.each([
    ['NaN', Number.NaN, 'not-a-number'],
    ['infinity', Infinity, 'not-a-number'],
    ['minus infinity', -Infinity, 'not-a-number'],
    ['a value below absolute zero', -273.16, 'impossible'],
    ['a value that no thermocouple reaches', 1372.1, 'out-of-range'],
  ])('%s is a fault', (_, tC, fault) => {
    expect(temperatureOf(reads(tC), own)).toBe(fault);
  });

  test.each([
    ['no number in the emf', Number.NaN, 25, 'not-a-number'],
    ['an infinite emf', Infinity, 25, 'not-a-number'],
    ['no number in the cold junction', 5000, Number.NaN, 'not-a-number'],
    ['a cold junction that the board cannot have', 5000, 180, 'cold-junction'],
    ['an emf beyond the type', 90_000, 25, 'out-of-range'],
  ])('%s is a fault', (_, uv, cjC, fault) => {
    expect(temperatureOf(emf(uv, cjC), own)).toBe(fault);
  });

  test('a fault that the device reports goes before its number', () => {
    expect(temperatureOf(reads(150, { faults: ['open', 'short-to-ground'] }), own)).toBe('open');
  });

  test('no temperature at all is no fault: a button press, an air probe, half an emf pair', () => {
    expect(temperatureOf(emptySample('board/1'), own)).toBeNull();
    expect(temperatureOf(emf(5000, null), own)).toBeNull();
  });

  test('a negative zero becomes a zero, as JSON would make it', () => {
    expect(Object.is(temperatureOf(reads(-0), own), 0)).toBe(true);
  });
});
