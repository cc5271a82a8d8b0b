import { describe, expect, test } from 'vitest';
import { noReading, notRecording, outOfBand, overLimit } from '../../../shared/alarm/conditions.ts';
import { faults } from '../../../shared/thermometer/reading.ts';

describe('over the limit', () => {
  test.each([
    [null, 'unknown'],
    [188.4, 'beyond'],
    [188.39, 'in-deadband'],
    [185.4, 'in-deadband'],
    [185.39, 'inside'],
  ])('at %s °C, limit 188.4, deadband 3 K: %s', (plateC, condition) => {
    expect(overLimit({ plateC, limitC: 188.4 }, 3)).toBe(condition);
  });
});

describe('no reading', () => {
  test('an ok reading clears; a fault is one where the plate may be hot, and never clears', () => {
    expect([noReading('ok', true), noReading('ok', false)]).toEqual(['inside', 'inside']);
    for (const fault of faults.filter((f) => f !== 'starting')) {
      expect(noReading(fault, true)).toBe('beyond');
      expect(noReading(fault, false)).toBe('unknown');
    }
  });

  test('boot text is no fault: it raises nothing, clears nothing, and begins an on-delay anew', () => {
    expect(noReading('starting', true)).toBe('in-deadband');
  });
});

const judged = (aboveByK: number) =>
  outOfBand({ kind: 'judged', aboveByK, belowByK: -17 - aboveByK }, 'above', 1);

describe('out of the band', () => {
  test('judged with a deadband of 1 K', () => {
    expect([0.1, 0, -1, -1.1].map(judged)).toEqual(['beyond', 'in-deadband', 'in-deadband', 'inside']);
    expect(outOfBand({ kind: 'judged', aboveByK: -20, belowByK: 3 }, 'below', 1)).toBe('beyond');
  });

  test('undecided raises nothing and clears nothing; what isn’t judged any more is over', () => {
    expect(outOfBand({ kind: 'undecided' }, 'above', 1)).toBe('unknown');
    expect(outOfBand({ kind: 'not-judged' }, 'below', 1)).toBe('inside');
  });
});

test('nothing is being kept', () => {
  expect([notRecording(true), notRecording(false)]).toEqual(['inside', 'beyond']);
});
