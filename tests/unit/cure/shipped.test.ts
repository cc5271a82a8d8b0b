import { expect, test } from 'vitest';
import { cementSchema } from '../../../shared/cure/cement.ts';
import { shippedCements } from '../../../shared/cure/shipped.ts';

test('three examples are shipped, a water-borne one first, none of them confirmed or with a limit', () => {
  expect(shippedCements.map(({ kind }) => kind)).toEqual(['water-borne', 'solvent-borne', 'two-part']);
  for (const cement of shippedCements) {
    expect(cementSchema.parse(cement)).toEqual(cement);
    expect(cement).toMatchObject({
      source: null,
      cementLimitC: null,
      standing: 'demo value, not from any instructions',
    });
    expect(cement.name).toMatch(/^Example: /);
  }
  expect(new Set(shippedCements.map(({ id }) => id)).size).toBe(3);
});
