import { describe, expect, test } from 'vitest';
import {
  accepted,
  driftOfKept,
  type KeptDial,
  keptDialSchema,
  noDial,
  withMeasured,
  withoutMark,
  withTyped,
} from '../../../../shared/iron/dial/kept.ts';
import { point } from './charts.ts';

const at = (hour: number): string => `2026-05-02T${String(hour).padStart(2, '0')}:00:00Z`;
const measured = (mark: number, meanC: number, hour: number, cycles = 3) => ({
  ...point(mark, meanC),
  cycles,
  at: at(hour),
});
const typed = (mark: number, meanC: number, hour: number) =>
  ({ ...point(mark, meanC), kind: 'typed', cycles: 0, at: at(hour) }) as const;
const none = noDial({ id: 'iron-1', simulated: false });
const marks = ({ chart }: KeptDial) => chart.points.map((p) => [p.mark, p.meanC]);
const charted = withMeasured(withMeasured(none, measured(3, 120, 1)), measured(5, 160, 2));

describe('what was measured', () => {
  test('at a new mark is charted; at a charted one it is only held against the chart', () => {
    expect(marks(charted)).toEqual([
      [3, 120],
      [5, 160],
    ]);
    const again = withMeasured(charted, measured(3, 124, 3));
    expect(marks(again)).toEqual(marks(charted));
    expect(again.since.map((p) => p.meanC)).toEqual([124]);
    expect(keptDialSchema.parse(JSON.parse(JSON.stringify(again)))).toEqual(again);
  });

  test('told again as the stretch goes on it replaces what it told before, wherever that stands', () => {
    const longer = withMeasured(charted, measured(3, 121, 1, 8));
    expect(marks(longer)[0]).toEqual([3, 121]);
    expect(longer.chart.earlier).toEqual([]);
    const since = withMeasured(withMeasured(charted, measured(3, 124, 3)), measured(3, 125, 3, 8)).since;
    expect(since.map((p) => [p.meanC, p.cycles])).toEqual([[125, 8]]);
  });

  test('says more than what was typed, and is not put away by it', () => {
    const both = withTyped(none, typed(4, 140, 1));
    expect(both?.chart.points[0]?.kind).toBe('typed');
    const after = withMeasured(both ?? none, measured(4, 138, 2));
    expect(after.chart.points.map((p) => p.kind)).toEqual(['measured']);
    expect(after.chart.earlier.map((p) => p.kind)).toEqual(['typed']);
    expect(withTyped(after, typed(4, 150, 3))).toBeNull();
  });

  test('is bounded', () => {
    let kept = charted;
    for (let i = 0; i < 200; i++)
      kept = withMeasured(kept, { ...point(3, 120), at: `2026-05-03T00:00:00.${i}Z` });
    expect(kept.since.length).toBe(60);
  });
});

describe('a point taken out', () => {
  test('is kept as earlier and stays out as its stretch goes on; another stretch charts the mark anew', () => {
    const out = withoutMark(withMeasured(charted, measured(5, 166, 4)), 5) ?? none;
    expect(marks(out)).toEqual([[3, 120]]);
    expect(out.since).toEqual([]);
    expect(out.chart.earlier.map((p) => p.meanC)).toEqual([160, 166]);
    expect(marks(withMeasured(out, measured(5, 166, 4, 8)))).toEqual([[3, 120]]);
    expect(marks(withMeasured(out, measured(5, 161, 6)))).toEqual([
      [3, 120],
      [5, 161],
    ]);
    expect(withoutMark(out, 5)).toBeNull();
  });
});

describe('a drift', () => {
  const drifted = [5, 6, 7, 8].reduce((kept, hour) => withMeasured(kept, measured(3, 129, hour)), charted);

  test('is seen in what came since, and accepting that makes it the chart', () => {
    expect(driftOfKept(charted)).toBeNull();
    expect(driftOfKept(drifted)?.byK).toBeCloseTo(9, 0);
    expect(driftOfKept(drifted)?.sinceAt).toBe(at(5));
    const fresh = accepted(drifted) ?? none;
    expect(marks(fresh)).toEqual([[3, 129]]);
    expect(fresh.since).toEqual([]);
    expect(fresh.chart.earlier.map((p) => [p.mark, p.meanC])).toEqual(
      expect.arrayContaining([
        [3, 120],
        [5, 160],
      ]),
    );
    expect(driftOfKept(fresh)).toBeNull();
  });

  test('without one there is nothing to accept', () => {
    expect(accepted(charted)).toBeNull();
  });
});
