import { expect, test } from 'vitest';
import { airConcerns } from '../../../shared/cure/concerns.ts';

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
