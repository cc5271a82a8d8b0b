import { describe, expect, test } from 'vitest';
import {
  ABSOLUTE_ZERO_C,
  cToF,
  formatTemperature,
  formatTemperatureDifference,
  fToC,
  temperatureFigure,
} from '../../../shared/units/temperature.ts';

describe('conversion (exact by definition)', () => {
  test.each([
    [0, 32],
    [100, 212],
    [-40, -40],
    [ABSOLUTE_ZERO_C, -459.67],
  ])('%d °C is %d °F', (c, f) => {
    expect(cToF(c)).toBeCloseTo(f, 10);
    expect(fToC(f)).toBeCloseTo(c, 10);
  });

  test('350 °F, the final shrink of FAA-H-8083-31 vol. 1 ch. 3, is 176.7 °C', () => {
    expect(fToC(350)).toBeCloseTo(176.667, 3);
  });
});

describe('display', () => {
  test('rounds and says the unit', () => {
    expect(formatTemperature(176.667, 'F')).toBe('350 °F');
    expect(formatTemperature(176.667, 'C', 1)).toBe('176.7 °C');
    expect(temperatureFigure(21, 'F')).toBe('70');
  });

  test('a difference has no offset', () => {
    expect(formatTemperatureDifference(2.2, 'F')).toBe('4 °F');
    expect(formatTemperatureDifference(-2.2, 'C', 1)).toBe('-2.2 °C');
  });

  test('nothing is ever "-0"', () => {
    expect(temperatureFigure(-0.2, 'C')).toBe('0');
    expect(temperatureFigure(-17.8, 'F')).toBe('0');
    expect(formatTemperatureDifference(-0.2, 'F')).toBe('0 °F');
    expect(formatTemperatureDifference(-0.04, 'C', 1)).toBe('0.0 °C');
  });
});
