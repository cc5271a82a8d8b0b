import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultAt, GrowingRows, isGap, type Rows } from '../../daemon/book/read/trace/rows.ts';
import { thin } from '../../daemon/book/read/trace/thin.ts';

/** Whatever span and however few buckets: no peak, no trough and no gap is lost. */

interface Row {
  readonly stepMs: number;
  /** Null: a fault. */
  readonly c: number | null;
}

const row = fc.record({
  stepMs: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60_000 })),
  c: fc.option(fc.double({ min: -50, max: 400, noNaN: true }), { freq: 6 }),
});
const table = fc.array(row, { minLength: 1, maxLength: 300 });
const share = fc.double({ min: 0, max: 1, noNaN: true });

function rowsOf(list: readonly Row[]): GrowingRows {
  const rows = new GrowingRows(4);
  let tMs = 0;
  for (const { stepMs, c } of list) {
    tMs += stepMs;
    if (c === null) rows.pushFault(tMs, 'open');
    else rows.push(tMs, c, c);
  }
  return rows;
}

const all = (rows: Rows): { tMs: number; lowC: number; highC: number; gap: boolean }[] =>
  Array.from({ length: rows.length }, (_, i) => ({
    tMs: rows.tMs[i] ?? 0,
    lowC: rows.lowC[i] ?? 0,
    highC: rows.highC[i] ?? 0,
    gap: isGap(rows, i),
  }));

const spanOf = (rows: Rows, one: number, other: number) => {
  const endMs = (rows.tMs[rows.length - 1] ?? 0) * 1.1 + 10;
  return { fromMs: Math.floor(Math.min(one, other) * endMs), toMs: Math.ceil(Math.max(one, other) * endMs) };
};

describe('a trace thinned out', () => {
  it('has the highest and the lowest raw reading of the span, exactly, at every zoom', () => {
    fc.assert(
      fc.property(table, share, share, fc.integer({ min: 2, max: 500 }), (list, one, other, points) => {
        const rows = rowsOf(list);
        const span = spanOf(rows, one, other);
        const raw = all(rows).filter((r) => !r.gap && r.tMs >= span.fromMs && r.tMs <= span.toMs);
        const given = all(thin(rows, { ...span, points })).filter((r) => !r.gap);
        expect(given.length === 0).toBe(raw.length === 0);
        if (raw.length === 0) return;
        expect(Math.max(...given.map((r) => r.highC))).toBe(Math.max(...raw.map((r) => r.highC)));
        expect(Math.min(...given.map((r) => r.lowC))).toBe(Math.min(...raw.map((r) => r.lowC)));
      }),
    );
  });

  it('has no more rows than were asked for, in order, within the span', () => {
    fc.assert(
      fc.property(table, share, share, fc.integer({ min: 2, max: 500 }), (list, one, other, points) => {
        const rows = rowsOf(list);
        const span = spanOf(rows, one, other);
        const times = all(thin(rows, { ...span, points })).map((r) => r.tMs);
        expect(times.length).toBeLessThanOrEqual(points);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        expect(times.every((t) => t >= span.fromMs && t <= span.toMs)).toBe(true);
      }),
    );
  });

  it('has a gap wherever one begins in a cell, and the one that holds as the span begins', () => {
    fc.assert(
      fc.property(table, share, share, fc.integer({ min: 2, max: 500 }), (list, one, other, points) => {
        const rows = rowsOf(list);
        const span = spanOf(rows, one, other);
        const raw = all(rows);
        const given = thin(rows, { ...span, points });
        const before = raw.filter((r) => r.tMs < span.fromMs).at(-1);
        if (before?.gap === true) {
          const first = Array.from({ length: given.length }, (_, i) => i).find((i) => isGap(given, i));
          expect(first === undefined ? null : faultAt(given, first)).toBe('open');
        }
        const cellMs = (span.toMs - span.fromMs) / Math.floor(points / 2);
        const gaps = all(given).filter((r) => r.gap);
        for (const gap of raw.filter((r) => r.gap && r.tMs >= span.fromMs && r.tMs <= span.toMs))
          expect(gaps.some((g) => Math.abs(g.tMs - gap.tMs) <= cellMs + 1e-6)).toBe(true);
        // What holds last holds last: a probe that reads again does not end in a gap, nor the other way round.
        const last = raw.filter((r) => r.tMs <= span.toMs).at(-1);
        const lastGiven = all(given).at(-1);
        if (last !== undefined && lastGiven !== undefined) expect(lastGiven.gap).toBe(last.gap);
      }),
    );
  });

  it('made of rows that were thinned out before has at least the highest of the span', () => {
    fc.assert(
      fc.property(table, share, share, fc.integer({ min: 2, max: 60 }), (list, one, other, points) => {
        const rows = rowsOf(list);
        const endMs = rows.tMs[rows.length - 1] ?? 0;
        const once = thin(rows, {
          fromMs: rows.tMs[0] ?? 0,
          toMs: endMs,
          points: Math.max(2, list.length >> 2),
        });
        const whole = Math.max(...all(rows).map((r) => (r.gap ? -1e9 : r.highC)));
        expect(Math.max(...all(once).map((r) => (r.gap ? -1e9 : r.highC)))).toBe(whole);
        const span = spanOf(rows, one, other);
        const raw = all(rows).filter((r) => !r.gap && r.tMs >= span.fromMs && r.tMs <= span.toMs);
        const given = all(thin(once, { ...span, points }, true)).filter((r) => !r.gap);
        if (raw.length > 0)
          expect(Math.max(...given.map((r) => r.highC))).toBeGreaterThanOrEqual(
            Math.max(...raw.map((r) => r.highC)),
          );
      }),
    );
  });
});
