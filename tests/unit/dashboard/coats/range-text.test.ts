import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockRange, waitText } from '../../../../dashboard/coats/range-text.ts';
import { clockWording } from '../../../../dashboard/parts/clock-time.ts';
import { lengthText } from '../../../../dashboard/parts/length.ts';
import { NOW_MS } from '../../../fixtures/coats.ts';

const MIN = 60_000;
const range = (earliest: number | null, likely: number | null, latest: number | null) => ({
  earliestMs: earliest === null ? null : NOW_MS + earliest * MIN,
  likelyMs: likely === null ? null : NOW_MS + likely * MIN,
  latestMs: latest === null ? null : NOW_MS + latest * MIN,
});
const wait = (earliest: number | null, likely: number | null, latest: number | null): string =>
  waitText(range(earliest, likely, latest), NOW_MS);

describe('how long until a coat may be ready', () => {
  it.each([
    [[20, 30, 45], 'in 20 to 45 min, likely 30'],
    [[40, 80, 130], 'in 40 min to 2 h 10 min, likely 80 min'],
    [[125, 170, 220], 'in 2 h 10 min to 3 h 40 min, likely 2 h 50 min'],
    [[120, 180, 240], 'in 2 to 4 h, likely 3'],
    [[19, 180, 600], 'in 19 min to 10 h, likely 3 h'],
    [[1500, 2200, 2900], 'in 25 to 48 h, likely 37'],
    [[60 * 24 * 4, 60 * 24 * 5, 60 * 24 * 7], 'in 4 to 7 days, likely 5'],
    [[12, 12.2, 12.4], 'in about 12 min'],
    [[0.2, 0.4, 0.6], 'within a minute'],
    [[-5, 6, 14], 'likely in 6 min, in 14 min at the latest'],
    [[-5, 0, 14], 'any time now, in 14 min at the latest'],
    [[-15, -6, 14], 'any time now, in 14 min at the latest'],
    [[-80, -70, -51], 'its latest time was 51 min ago'],
    [[-80, -70, 0], 'its latest time was just now'],
    [[20, null, null], 'in 20 min at the earliest; at the latest can’t be said'],
    [[20, 95, null], 'in 20 min at the earliest, likely 1 h 40 min; at the latest can’t be said'],
    [[-20, -5, null], 'any time now; at the latest can’t be said'],
    [[-20, 5, null], 'likely in 5 min; at the latest can’t be said'],
    [[-20, null, null], 'when can’t be said in this air'],
    [[null, null, null], 'not in this air, as far as can be seen'],
  ] as const)('%j: %s', (minutes, text) => {
    const [earliest, likely, latest] = minutes;
    expect(wait(earliest, likely, latest)).toBe(text);
  });

  it('is a number of minutes, hours or days that is no further off than its rounding', () => {
    fc.assert(
      fc.property(fc.integer({ min: MIN, max: 60 * 24 * 60 * MIN }), (ms) => {
        const text = lengthText(ms);
        const [, days = 0] = /^(\d+) days$/.exec(text) ?? [];
        const [, h = 0] = /^(\d+) h/.exec(text) ?? [];
        const [, min = 0] = /(\d+) min$/.exec(text) ?? [];
        const said = (Number(days) * 1440 + Number(h) * 60 + Number(min)) * MIN;
        expect(Math.abs(said - ms)).toBeLessThanOrEqual(Math.max(MIN, ms / 6));
        expect(text).not.toMatch(/\b60 min/);
      }),
    );
  });

  it('never names an earliest time that is longer off than its latest', () => {
    fc.assert(
      fc.property(fc.tuple(fc.nat(5000), fc.nat(5000), fc.nat(5000)), (drawn) => {
        const [low, likely, high] = drawn.toSorted((a, b) => a - b) as [number, number, number];
        expect(wait(low + 1, likely + 1, high + 1)).toMatch(/^in |^within /);
      }),
    );
  });
});

describe('the same as times of day', () => {
  const at = clockWording('Europe/Oslo');

  it('are in a zone, whatever the tablet’s own clock says', () => {
    expect(clockRange(range(20, 30, 45), NOW_MS, at)).toBe('14:40 to 15:05, likely 14:50');
    expect(clockRange(range(20, null, null), NOW_MS, at)).toBe('14:40 at the earliest');
    expect(clockRange(range(null, null, null), NOW_MS, at)).toBe('');
  });
});
