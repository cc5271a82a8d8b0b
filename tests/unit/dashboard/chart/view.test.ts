import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  between,
  moved,
  SHORTEST_MS,
  showing,
  type View,
  within,
  withMargin,
  zoomed,
} from '../../../../dashboard/chart/view.ts';

const whole: View = { fromMs: 0, toMs: 100_000 };

describe('the part of a trace that is shown', () => {
  it('is zoomed about a moment that stays where it is', () => {
    expect(zoomed(whole, whole, 0.5, 25_000)).toEqual({ fromMs: 12_500, toMs: 62_500 });
    expect(zoomed({ fromMs: 40_000, toMs: 60_000 }, whole, 2)).toEqual({ fromMs: 30_000, toMs: 70_000 });
  });

  it('moves by a share of itself, and stops at the ends', () => {
    const view = { fromMs: 40_000, toMs: 60_000 };
    expect(moved(view, whole, 0.5)).toEqual({ fromMs: 50_000, toMs: 70_000 });
    expect(moved(view, whole, -5)).toEqual({ fromMs: 0, toMs: 20_000 });
    expect(moved(view, whole, 5)).toEqual({ fromMs: 80_000, toMs: 100_000 });
  });

  it('is chosen by its ends in either order, and never shorter than can be looked at', () => {
    expect(between(30_000, 10_000, whole)).toEqual({ fromMs: 10_000, toMs: 30_000 });
    expect(between(50_000, 50_001, whole)).toEqual({ fromMs: 49_000, toMs: 51_001 });
  });

  it('stays where it is when what is to be shown is in it, and else goes there', () => {
    const view = { fromMs: 40_000, toMs: 60_000 };
    expect(showing(view, whole, 50_000)).toBe(view);
    expect(showing(view, whole, 61_000)).toEqual({ fromMs: 51_000, toMs: 71_000 });
    expect(showing(view, whole, 100)).toEqual({ fromMs: 0, toMs: 20_000 });
  });

  it('is fetched with half as much to either side, within the session', () => {
    expect(withMargin({ fromMs: 10_000, toMs: 50_000 }, whole)).toEqual({ fromMs: 0, toMs: 70_000 });
  });

  it('lies within the whole whatever is done to it', () => {
    const ms = fc.integer({ min: 0, max: 10_000_000 });
    fc.assert(
      fc.property(ms, ms, ms, fc.double({ min: 0.001, max: 1000, noNaN: true }), (a, b, end, factor) => {
        const all = { fromMs: 0, toMs: Math.max(1, end) };
        const most = Math.max(SHORTEST_MS, all.toMs);
        for (const view of [
          within({ fromMs: a, toMs: b }, all),
          zoomed(between(a, b, all), all, factor, a),
          moved(between(a, b, all), all, factor),
        ]) {
          expect(view.fromMs).toBeGreaterThanOrEqual(0);
          expect(view.toMs).toBeLessThanOrEqual(most + 1);
          expect(view.toMs - view.fromMs).toBeGreaterThanOrEqual(SHORTEST_MS - 1);
        }
      }),
    );
  });
});
