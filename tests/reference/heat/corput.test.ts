import { describe, expect, it } from 'vitest';
import { corput, skipOrder } from '../../../shared/heat/work/corput.ts';

/**
 * The order of skipping against what is published of the van der Corput sequence in base 2.
 *
 * - Its terms: 1/2, 1/4, 3/4, 1/8, 5/8, 3/8, 7/8, 1/16, 9/16 (seen: documentation of the packages vdc and vipor).
 * - The star discrepancy of N points in a row, exactly: 1/(2N) + max |x_n - (2n - 1)/(2N)| over them sorted
 *   (Niederreiter 1992, theorem 2.6, from memory; it follows from the definition).
 * - N D*_N <= log N / (3 log 2) + 1 (Bejian and Faure 1977, from memory; the constant 1 / (3 log 2) seen in a note on the
 *   web). limsup (N D*_N - log N / (3 log 2)) = 4/9 + log 3 / (3 log 2) = 0.9728 (the same, from memory).
 */
const starDiscrepancy = (points: readonly number[]): number => {
  const n = points.length;
  const off = points.toSorted((a, b) => a - b).map((x, i) => Math.abs(x - (2 * i + 1) / (2 * n)));
  return 1 / (2 * n) + Math.max(...off);
};
const logTerm = (n: number): number => Math.log(n) / (3 * Math.log(2));

describe('the van der Corput sequence in base 2', () => {
  it('begins as published', () => {
    expect(Array.from({ length: 9 }, (_, i) => corput(i + 1))).toEqual(
      [8, 4, 12, 2, 10, 6, 14, 1, 9].map((sixteenths) => sixteenths / 16),
    );
    expect(corput(0)).toBe(0);
  });

  it('keeps to its published discrepancy, and comes close to it', () => {
    const points: number[] = [];
    let largest = 0;
    for (let n = 1; n <= 2_800; n += 1) {
      points.push(corput(n - 1));
      const over = n * starDiscrepancy(points) - logTerm(n);
      expect(over).toBeLessThanOrEqual(1 + 1e-9);
      largest = Math.max(largest, over);
    }
    // The largest comes near the published limit from below or above, so the bound is not merely far away.
    expect(largest).toBeGreaterThan(0.96);
    expect(largest).toBeLessThanOrEqual(1 + 1e-9);
  });

  it('measures the discrepancy by its definition', () => {
    const points = [0.1, 0.15, 0.7];
    // The supremum over [0, b) is come to at a point or just beyond it.
    const ends = [...Array.from({ length: 1001 }, (_, i) => i / 1000), ...points.map((p) => p + 1e-9)];
    const off = (b: number): number => Math.abs(points.filter((p) => p < b).length / points.length - b);
    const byDefinition = Math.max(...ends.map(off));
    expect(starDiscrepancy(points)).toBeCloseTo(byDefinition, 6);
  });
});

describe('the order of skipping', () => {
  // FAA-H-8083-31 vol. 1 ch. 3: from one end to the other, and then to the middle (seen).
  it('goes to one end, the other, the middle', () => {
    expect(skipOrder(3)).toEqual([0, 2, 1]);
    expect(skipOrder(5)).toEqual([0, 4, 2, 1, 3]);
    expect(skipOrder(9)).toEqual([0, 8, 4, 2, 6, 1, 5, 3, 7]);
  });

  it('takes each place once, however many there are', () => {
    for (let count = 0; count <= 400; count += 1)
      expect(skipOrder(count).toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
  });

  /**
   * Of the first N of so many places, by their middles. The two ends that come first and the rounding to whole places
   * are ours: each of the two ends counts for at most 1/N, and rounding for half a place and the half that the middles
   * are off the ends.
   */
  it.each([3, 6, 17, 18, 60, 144])('keeps to the published discrepancy over %d places', (count) => {
    const order = skipOrder(count);
    for (let n = 1; n <= count; n += 1) {
      const middles = order.slice(0, n).map((place) => (place + 0.5) / count);
      expect(n * starDiscrepancy(middles)).toBeLessThanOrEqual(logTerm(n) + 1 + 2 + n / count);
    }
  });

  it('leaves far less without than running along', () => {
    for (const count of [6, 18, 60]) {
      const half = Math.floor(count / 2);
      const along = Array.from({ length: half }, (_, i) => (i + 0.5) / count);
      const skipping = skipOrder(count)
        .slice(0, half)
        .map((place) => (place + 0.5) / count);
      expect(starDiscrepancy(skipping)).toBeLessThan(starDiscrepancy(along) / 1.5);
    }
  });
});
