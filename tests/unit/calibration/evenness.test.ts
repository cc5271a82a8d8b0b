import { expect, test } from 'vitest';
import { evennessOf, expectedOverLeadK, hottestOf } from '../../../shared/iron/evenness.ts';

const spots = [
  { at: 'demo/tip', plateC: 168 },
  { at: 'demo/middle', plateC: 177 },
  { at: 'demo/heel', plateC: 171 },
];

test('hottest, coldest, mean, spread, and how far the hottest is over the leading probe', () => {
  expect(evennessOf(spots, 'demo/tip')).toEqual({
    hottest: { at: 'demo/middle', plateC: 177 },
    coldest: { at: 'demo/tip', plateC: 168 },
    meanC: 172,
    spreadK: 9,
    overLeadK: 9,
    count: 3,
  });
});

test('where the leading one is the hottest, nothing is over it', () => {
  expect(evennessOf(spots, 'demo/middle')?.overLeadK).toBe(0);
});

test('a leading one without a reading: not known, rather than nothing', () => {
  const faulty = [...spots, { at: 'demo/lead', plateC: Number.NaN }];
  expect(evennessOf(faulty, 'demo/lead')).toMatchObject({ overLeadK: null, count: 3 });
  expect(evennessOf(spots, 'demo/other')?.overLeadK).toBeNull();
});

test('one spot says nothing of evenness, but is the hottest', () => {
  expect(evennessOf(spots.slice(0, 1), 'demo/tip')).toBeNull();
  expect(evennessOf([], 'demo/tip')).toBeNull();
  expect(hottestOf(spots.slice(0, 1))).toEqual({ at: 'demo/tip', plateC: 168 });
  expect(hottestOf([{ at: 'demo/tip', plateC: Number.NaN }])).toBeNull();
});

test('of equals the first', () => {
  const even = spots.map(({ at }) => ({ at, plateC: 170 }));
  expect(evennessOf(even, 'demo/heel')).toMatchObject({
    hottest: { at: 'demo/tip' },
    spreadK: 0,
    overLeadK: 0,
  });
});

test('of several looks the widest is to be expected', () => {
  const looks = [
    evennessOf(spots, 'demo/tip'),
    evennessOf(spots, 'demo/heel'),
    evennessOf(spots, 'demo/none'),
  ];
  expect(expectedOverLeadK(looks.filter((look) => look !== null))).toBe(9);
  expect(expectedOverLeadK([])).toBeNull();
});
