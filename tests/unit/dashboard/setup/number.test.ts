import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  differenceTyped,
  inUnit,
  readDifference,
  readNumber,
  readTemperature,
  temperatureTyped,
  writeNumber,
} from '../../../../dashboard/setup/fields/number.ts';
import { fToC } from '../../../../shared/units/temperature.ts';

describe('a number as people type it', () => {
  it.each([
    ['250', 250],
    ['250,5', 250.5],
    ['250.5', 250.5],
    [' 250 ', 250],
    ['250,', 250],
    ['−12,5', -12.5],
    [',5', 0.5],
    ['+3', 3],
  ])('%s is read', (text, value) => expect(readNumber(text)).toBe(value));

  it.each(['', '-', ',', '1,250.5', '1.2.3', '1e3', 'hot', '12 5', '0x10', 'NaN', 'Infinity', '٣'])(
    '"%s" is none',
    (text) => expect(readNumber(text)).toBeNull(),
  );

  it('never makes another number of one with two decimals, however it is written', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.constantFrom(',', '.'),
        (hundredths, sign) => {
          const text = (hundredths / 100).toFixed(2).replace('.', sign);
          expect(readNumber(text)).toBe(hundredths / 100);
        },
      ),
    );
  });

  it('is written as briefly as it stays itself', () => {
    expect([250, 250.5, 250.25, 1 / 3, -0.0000001].map(writeNumber)).toEqual([
      '250',
      '250.5',
      '250.25',
      '0.3',
      '0',
    ]);
  });
});

describe('a temperature in a field', () => {
  it('that is not touched keeps its exact value in either unit', () => {
    const c = fToC(250);
    const typed = temperatureTyped(c, 'C');
    expect(typed).toEqual({ text: '121.1', value: c });
    expect(inUnit(typed, 'F')).toEqual({ text: '250', value: c });
  });

  it('is read in the unit that is shown, with or without its sign, and in no other', () => {
    expect(readTemperature('374,5', 'F').value).toBeCloseTo(190.278, 3);
    expect(readTemperature('190.5 °C', 'C').value).toBe(190.5);
    expect(readTemperature('190 C', 'F').value).toBeNull();
    expect(inUnit(readTemperature('about 200', 'F'), 'C').text).toBe('about 200');
  });

  it('as a difference has no offset', () => {
    expect(differenceTyped(2.2, 'F').text).toBe('3.96');
    expect(readDifference('3,6', 'F').value).toBeCloseTo(2, 10);
    expect(readDifference('2', 'C').value).toBe(2);
  });
});
