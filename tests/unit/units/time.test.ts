import { expect, test } from 'vitest';
import { formatDuration } from '../../../shared/units/time.ts';

test.each([
  [-5, '0 s'],
  [0, '0 s'],
  [999, '0 s'],
  [8000, '8 s'],
  [59_999, '59 s'],
  [60_000, '1 min 00 s'],
  [125_000, '2 min 05 s'],
  [3_599_999, '59 min 59 s'],
  [3_600_000, '1 h 00 min'],
  [4_800_000, '1 h 20 min'],
  [90_000_000, '25 h 00 min'],
])('%d ms is said as "%s"', (ms, text) => {
  expect(formatDuration(ms)).toBe(text);
});
