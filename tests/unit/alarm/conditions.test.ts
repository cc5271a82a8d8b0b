import { describe, expect, test } from 'vitest';
import {
  headingForLimit,
  noReading,
  notRecording,
  outOfBand,
  overLimit,
  type PlateFacts,
} from '../../../shared/alarm/conditions.ts';
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

const facts = (more: Partial<PlateFacts>): PlateFacts => ({
  plateC: 180,
  slopeKPerS: 1,
  limitC: 190,
  expectedPeakC: null,
  ...more,
});

describe('heading for the limit', () => {
  test.each([
    ['ten seconds before it', {}, 'beyond'],
    ['a little more', { plateC: 179.9 }, 'in-deadband'],
    ['more than fifteen', { plateC: 174.9 }, 'inside'],
    ['falling', { slopeKPerS: -1 }, 'inside'],
    ['steady, however near', { plateC: 189.9, slopeKPerS: 0 }, 'inside'],
    ['no slope known', { slopeKPerS: null }, 'unknown'],
    ['no reading', { plateC: null }, 'unknown'],
    ['over it: that is another alarm, and this one stays as it is', { plateC: 190 }, 'in-deadband'],
  ])('%s', (_, more, condition) => {
    expect(headingForLimit(facts(more))).toBe(condition);
  });

  test('held against the plate only once it passes its own peaks by 2 K', () => {
    const known = { slopeKPerS: 2, expectedPeakC: 186 };
    expect(headingForLimit(facts({ ...known, plateC: 188 }))).toBe('inside');
    expect(headingForLimit(facts({ ...known, plateC: 188.1 }))).toBe('beyond');
  });

  test('peaks that are over the limit themselves excuse nothing', () => {
    expect(headingForLimit(facts({ expectedPeakC: 190 }))).toBe('beyond');
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
