import { expect, test } from 'vitest';
import { cementSchema } from '../../../shared/cure/cement.ts';
import { shippedCements } from '../../../shared/cure/shipped.ts';

test('what could never dry, or cure, is refused as a cement', () => {
  const [water] = shippedCements;
  if (water === undefined) return expect.unreachable();
  const refused = (own: object): boolean => !cementSchema.safeParse({ ...water, ...own }).success;
  expect(refused({ atRhPct: 99.5 })).toBe(true);
  expect(refused({ atRhPct: 99 })).toBe(false);
  expect(refused({ kind: 'moisture-curing', atRhPct: 0.5 })).toBe(true);
  expect(refused({ kind: 'moisture-curing', atRhPct: 1 })).toBe(false);
});
