import { expect, it } from 'vitest';
import { clockWording } from '../../../../dashboard/parts/clock-time.ts';
import { NOW_MS } from '../../../fixtures/coats.ts';

const MIN = 60_000;

it('times of day are in a zone, and name the day where it is another one', () => {
  const at = clockWording('Europe/Oslo');
  expect(at(NOW_MS + 20 * MIN, NOW_MS)).toBe('14:40');
  expect(at(NOW_MS + 12 * 60 * MIN, NOW_MS)).toMatch(/^\S+ 02:20$/);
  expect(at(NOW_MS - 15 * 60 * MIN, NOW_MS)).toMatch(/^\S+ 23:20$/);
  expect(at(NOW_MS + 10 * 24 * 60 * MIN, NOW_MS)).toMatch(/14/);
});
