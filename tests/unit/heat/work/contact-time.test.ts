import { expect, test } from 'vitest';
import { areaLimitMs } from '../../../../shared/heat/work/contact-time.ts';

/** Demo data: 200 cm x 100 cm in a grid of 10 x 20 cells of 100 cm2 each. */
const piece = { lengthCm: 200, widthCm: 100, rows: 10, columns: 20 };

test('the time on an area grows with its size and falls with the sole', () => {
  // 48 cells of 100 cm2 under a sole of 200 cm2: 24 soles of 4 s.
  expect(areaLimitMs(piece, { rows: 8, columns: 6 }, 200)).toBeCloseTo(96_000, 6);
  expect(areaLimitMs(piece, { rows: 8, columns: 6 }, 100)).toBeCloseTo(192_000, 6);
  expect(areaLimitMs(piece, { rows: 1, columns: 20 }, 200)).toBeCloseTo(40_000, 6);
});

test('is never under ten seconds, and not known where a size is not', () => {
  const small = { rows: 1, columns: 1 };
  expect(areaLimitMs(piece, small, 200)).toBe(10_000);
  expect(areaLimitMs({ ...piece, lengthCm: null }, small, 200)).toBeNull();
  expect(areaLimitMs({ ...piece, widthCm: null }, small, 200)).toBeNull();
  expect(areaLimitMs(piece, small, null)).toBeNull();
  expect(areaLimitMs(piece, small, 0)).toBeNull();
});
