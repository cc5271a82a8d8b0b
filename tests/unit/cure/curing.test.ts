import { describe, expect, test } from 'vitest';
import { cured, paceAt, reachedMs } from '../../../shared/cure/curing.ts';
import { type DriesBy, dryingPace, dryingRate } from '../../../shared/cure/rate.ts';
import { curingIn, example, HOUR_MS, MINUTE_MS, NOW_MS, OWN_AIR, probeAt, probed } from './curing.ts';

const kinds = ['water-borne', 'solvent-borne', 'two-part', 'moisture-curing'] as const;
const water = example('water-borne');

describe('how fast it dries', () => {
  test.each(kinds)('in the instructions’ own air exactly as they say: %s', (kind) => {
    expect(dryingRate(example(kind), OWN_AIR)).toBe(1);
    expect(dryingRate(example(kind), { ...OWN_AIR, rhPct: null })).toBe(1);
    expect(dryingPace(example(kind), OWN_AIR, { airK: 0, rhPct: 0 })).toEqual({
      least: 1,
      likely: 1,
      most: 1,
    });
  });

  test('water stays in saturated air, moisture-curing stands still in dry air; the others don’t mind', () => {
    const [wet, dry] = [100, 0].map((rhPct) => ({ airC: 23, rhPct }));
    if (wet === undefined || dry === undefined) return expect.unreachable();
    expect(dryingRate(water, wet)).toBe(0);
    expect(dryingRate(water, dry)).toBeCloseTo(2, 9);
    expect(dryingRate(example('moisture-curing'), dry)).toBe(0);
    expect(dryingRate(example('moisture-curing'), wet)).toBeCloseTo(2, 9);
    for (const kind of ['solvent-borne', 'two-part'] as const) {
      expect(dryingRate(example(kind), wet)).toBe(1);
      expect(dryingRate(example(kind), dry)).toBe(1);
    }
  });

  test('humidity that isn’t told widens it where it matters only', () => {
    const air = { airC: 23, rhPct: null };
    const known = { airK: 0, rhPct: 0 };
    const rounded = (cement: DriesBy): readonly number[] =>
      Object.values(dryingPace(cement, air, known)).map((rate: number) => Number(rate.toFixed(9)));
    expect(rounded(water)).toEqual([0.5, 1, 1.5]);
    expect(dryingPace(example('two-part'), air, known)).toEqual({ least: 1, likely: 1, most: 1 });
    expect(rounded(example('moisture-curing'))).toEqual([0.5, 1, 1.5]);
  });

  test('air is never guessed to be saturated, and what was told to be is', () => {
    expect(dryingPace(water, { airC: 23, rhPct: 90 }, { airK: 6, rhPct: 20 }).least).toBeGreaterThan(0);
    const told = dryingPace(water, { airC: 23, rhPct: 100 }, { airK: 0.5, rhPct: 2 });
    expect(told).toMatchObject({ least: 0, likely: 0 });
    expect(told.most).toBeGreaterThan(0);
  });

  test('nor bone dry, where nothing that cures by moisture would ever cure', () => {
    const moisture = example('moisture-curing');
    expect(dryingPace(moisture, { airC: 23, rhPct: 20 }, { airK: 6, rhPct: 20 }).least).toBeGreaterThan(0);
    const dry = { ...moisture, atRhPct: 25 };
    expect(dryingPace(dry, null, { airK: 0, rhPct: 0 }).least).toBeGreaterThan(0);
    expect(dryingPace(moisture, { airC: 23, rhPct: 0 }, { airK: 0, rhPct: 5 }).least).toBe(0);
  });

  test('nothing known is wider than anything told long ago', () => {
    for (const kind of kinds) {
      const old = dryingPace(example(kind), OWN_AIR, { airK: 6, rhPct: 20 });
      const none = dryingPace(example(kind), null, { airK: 0, rhPct: 0 });
      expect(none.likely).toBe(1);
      expect(none.least).toBeLessThan(old.least);
      expect(none.most).toBeGreaterThan(old.most);
    }
  });
});

describe('how far it has come', () => {
  test('an hour in the instructions’ own air is an hour', () => {
    const curing = curingIn(water, probed(0, 60));
    expect(cured(curing, NOW_MS, NOW_MS + HOUR_MS)).toEqual({ leastS: 3600, likelyS: 3600, mostS: 3600 });
    expect(reachedMs(curing, NOW_MS, 3600, 'likely')).toBe(NOW_MS + HOUR_MS);
  });

  test('over air that changes it adds up: half an hour at 75 %, half an hour at 25 %', () => {
    const points = [...probed(0, 20, { airC: 23, rhPct: 75 }), ...probed(30, 60, { airC: 23, rhPct: 25 })];
    const curing = curingIn(water, points);
    expect(cured(curing, NOW_MS, NOW_MS + HOUR_MS).likelyS).toBeCloseTo(0.5 * 1800 + 1.5 * 1800, 6);
    expect(reachedMs(curing, NOW_MS, 900, 'likely')).toBe(NOW_MS + HOUR_MS / 2);
    expect(reachedMs(curing, NOW_MS, 900 + 1350, 'likely')).toBe(NOW_MS + HOUR_MS / 2 + 15 * MINUTE_MS);
  });

  test('before any air was told the instructions’ own is assumed, with the widest range', () => {
    const curing = curingIn(water, probed(0, 60));
    const before = cured(curing, NOW_MS - HOUR_MS, NOW_MS);
    expect(before.likelyS).toBeCloseTo(3600, 6);
    expect(before.leastS).toBeLessThan(2000);
    expect(before.mostS).toBeGreaterThan(6000);
    expect(reachedMs(curing, NOW_MS - HOUR_MS, 1800, 'likely')).toBe(NOW_MS - HOUR_MS / 2);
    expect(reachedMs(curing, NOW_MS - HOUR_MS, 5400, 'likely')).toBe(NOW_MS + HOUR_MS / 2);
  });

  test('a time that ends before it begins is none', () => {
    const curing = curingIn(water, probed(0, 60));
    expect(cured(curing, NOW_MS + 1, NOW_MS)).toEqual({ leastS: 0, likelyS: 0, mostS: 0 });
  });

  test('in saturated air it stands, and is never reached while nothing else is told', () => {
    const curing = curingIn(water, [probeAt(0, { airC: 10, rhPct: 100 })]);
    expect(paceAt(curing, NOW_MS).likely).toBe(0);
    expect(reachedMs(curing, NOW_MS, 1, 'likely')).toBeNull();
    expect(reachedMs(curing, NOW_MS, 1, 'least')).toBeNull();
  });

  test('what takes longer than can be seen has no time', () => {
    const curing = curingIn(water, probed(0, 60, { airC: 23, rhPct: 99 }));
    expect(reachedMs(curing, NOW_MS, 2 * 86_400, 'likely')).toBeNull();
    expect(reachedMs(curing, NOW_MS + 61 * 24 * HOUR_MS, 1, 'likely')).toBeNull();
    expect(cured(curing, NOW_MS + 61 * 24 * HOUR_MS, NOW_MS + 62 * 24 * HOUR_MS).likelyS).toBe(0);
  });
});
