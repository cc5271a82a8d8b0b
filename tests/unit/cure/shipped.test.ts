import { expect, test } from 'vitest';
import { cementSchema } from '../../../shared/cure/cement.ts';
import { airConcerns } from '../../../shared/cure/concerns.ts';
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

test('a cement’s own limits stand in place of general practice, each for itself', () => {
  const airLimits = { lowC: 15, highC: null, lowRhPct: 40, highRhPct: 95 };
  expect(airConcerns({ airLimits }, { airC: 12, rhPct: 35 })).toEqual([
    { kind: 'too-cold', by: 'instructions', limit: 15 },
    { kind: 'too-dry', by: 'instructions', limit: 40 },
  ]);
  expect(airConcerns({ airLimits }, { airC: 20, rhPct: 90 })).toEqual([
    { kind: 'near-dew-point', by: 'practice', limit: 3 },
  ]);
  expect(airConcerns({ airLimits }, { airC: 35, rhPct: null }).map(({ kind, by }) => [kind, by])).toEqual([
    ['too-hot', 'practice'],
  ]);
  // At its limits it is as it should be.
  expect(airConcerns({ airLimits }, { airC: 15, rhPct: 40 })).toEqual([]);
  // Without instructions nobody says that air is too dry.
  expect(airConcerns(null, { airC: 20, rhPct: 0 })).toEqual([]);
});

test('what could never dry, or cure, is refused as a cement', () => {
  const [water] = shippedCements;
  if (water === undefined) return expect.unreachable();
  const refused = (own: object): boolean => !cementSchema.safeParse({ ...water, ...own }).success;
  expect(refused({ atRhPct: 99.5 })).toBe(true);
  expect(refused({ atRhPct: 99 })).toBe(false);
  expect(refused({ kind: 'moisture-curing', atRhPct: 0.5 })).toBe(true);
  expect(refused({ kind: 'moisture-curing', atRhPct: 1 })).toBe(false);
});
