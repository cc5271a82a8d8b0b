import { expect, test } from 'vitest';
import { evennessOf, expandedK, hottestOf } from '../../../shared/iron/evenness.ts';

const spots = [
  { at: 'demo/tip', plateC: 168, uK: 1.5 },
  { at: 'demo/middle', plateC: 177, uK: 2 },
  { at: 'demo/heel', plateC: 171, uK: 0.5 },
];

test('hottest, coldest, mean, spread, and how far the hottest is over the leading probe, with uncertainties', () => {
  expect(evennessOf(spots, 'demo/heel')).toEqual({
    hottest: spots[1],
    coldest: spots[0],
    meanC: 172,
    spreadK: 9,
    // GUM 5.1.2: the root of the sum of squares, of 1.5 and 2.
    spreadUK: 2.5,
    overLeadK: 6,
    overLeadUK: Math.hypot(2, 0.5),
    count: 3,
  });
  expect(expandedK(2.5)).toBe(5);
});

test('where the leading one is the hottest, nothing is over it, and surely so', () => {
  expect(evennessOf(spots, 'demo/middle')).toMatchObject({ overLeadK: 0, overLeadUK: 0 });
});

test('a leading one without a reading: not known, rather than nothing', () => {
  const faulty = [...spots, { at: 'demo/lead', plateC: Number.NaN, uK: 1 }];
  expect(evennessOf(faulty, 'demo/lead')).toMatchObject({ overLeadK: null, overLeadUK: null, count: 3 });
  expect(evennessOf(spots, 'demo/other')?.overLeadK).toBeNull();
});

test('one spot says nothing of evenness, but is the hottest', () => {
  expect(evennessOf(spots.slice(0, 1), 'demo/tip')).toBeNull();
  expect(evennessOf([], 'demo/tip')).toBeNull();
  expect(hottestOf(spots.slice(0, 1))).toBe(spots[0]);
  expect(hottestOf([{ at: 'demo/tip', plateC: Number.NaN, uK: 1 }])).toBeNull();
});

test('of equals the first, and that there is no difference is known no better than any other', () => {
  const even = spots.map(({ at }) => ({ at, plateC: 170, uK: 1 }));
  expect(evennessOf(even, 'demo/heel')).toMatchObject({
    hottest: { at: 'demo/tip' },
    coldest: { at: 'demo/heel' },
    spreadK: 0,
    spreadUK: Math.SQRT2,
    overLeadK: 0,
  });
});
