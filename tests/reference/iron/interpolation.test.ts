import { describe, expect, it } from 'vitest';
import { curveThrough, placesOf, valueAt } from '../../../shared/iron/dial/pchip.ts';
import { rows } from '../data.ts';

/**
 * Shape-preserving interpolation against the published example of the NAG Library (seen), over the data RPN 14 of
 * Fritsch and Carlson (1980). Sources and standing: data/4_statistics/SOURCES.md.
 */

const points = (file: string): { readonly x: number; readonly y: number }[] =>
  rows(`4_statistics/${file}`).map((row) => {
    const [x, y] = row.map(Number);
    return { x: x ?? Number.NaN, y: y ?? Number.NaN };
  });

describe('e01bec: nine points, eleven values to four decimals', () => {
  const curve = curveThrough(points('nag_e01bec_data.csv'));
  const printed = points('nag_e01bec_results.csv');

  it('rounds to all of them', () => {
    expect(printed).toHaveLength(11);
    for (const { x, y } of printed)
      expect(Math.abs((valueAt(curve, x) ?? Number.NaN) - y)).toBeLessThanOrEqual(0.00005 + 1e-12);
  });

  it('finds the places of the printed values back, as far as four decimals place them', () => {
    for (const { x, y } of printed.filter((p) => p.y > 0.1 && p.y < 0.9999)) {
      const places = placesOf(curve, y);
      expect(places).toHaveLength(1);
      expect(Math.abs((valueAt(curve, places[0] ?? 0) ?? Number.NaN) - y)).toBeLessThan(1e-12);
      expect(Math.abs((valueAt(curve, x) ?? 0) - (valueAt(curve, places[0] ?? 0) ?? 1))).toBeLessThan(
        0.00006,
      );
    }
  });
});
