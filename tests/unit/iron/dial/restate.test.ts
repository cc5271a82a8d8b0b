import { describe, expect, it } from 'vitest';
import { type Correction, corrected, uncorrected } from '../../../../shared/calibration/correction.ts';
import { emptyChart, withPoint } from '../../../../shared/iron/dial/chart.ts';
import { figuresOf } from '../../../../shared/iron/dial/figures.ts';
import { type KeptDial, noDial } from '../../../../shared/iron/dial/kept.ts';
import { restatedDial } from '../../../../shared/iron/dial/restate.ts';
import { point } from './charts.ts';

const PROBE = 'board/1';
const correction = (b1K: number, b2: number, t0C = 100): Correction => ({
  method: 'line',
  t0C,
  b1K,
  b2,
  u1K: 0.3,
  u2: 0.001,
  r: 0,
  sK: null,
  fromC: 20,
  toC: 200,
});
const calibration = (id: string, one: Correction) => ({ id, probe: PROBE, correction: one });
const first = calibration('first', correction(2, 0.01));
const second = calibration('second', correction(-3, -0.02, 60));

/** Cycles with the readings of the probe as it gives them, and what they are under a correction. */
const peaksC = [161, 163.5, 162];
const troughsC = [139, 137, 138.5];
const under = (one: Correction | null) => (c: number) => (one === null ? c : corrected(c, one));
const figuresUnder = (one: Correction | null) => {
  const cycles = peaksC.map((peakC, i) => ({
    fromMs: 80_000 * i,
    peakMs: 80_000 * i + 30_000,
    toMs: 80_000 * (i + 1),
    peakC: under(one)(peakC),
    troughC: under(one)(troughsC[i] ?? 0),
    meanC: under(one)(150 + i),
  }));
  const heatedUp = { fromC: under(one)(21), timeS: 140, peakC: under(one)(170) };
  return figuresOf(cycles, heatedUp) ?? expect.unreachable();
};

/** A dial with one point and a last stretch, measured under a correction. */
function dialUnder(one: ReturnType<typeof calibration> | null): KeptDial {
  const madeWith = { probe: PROBE, calibration: one?.id ?? null };
  const c = under(one?.correction ?? null);
  const slope = 1 + (one?.correction.b2 ?? 0);
  const measured = {
    ...point(4, c(150)),
    peakC: c(162),
    troughC: c(138),
    peakSpreadK: slope * 1.5,
    meanSpreadK: slope * 0.5,
    lagAllowanceK: slope * 0.8,
    madeWith,
  };
  const chart = withPoint(emptyChart, measured);
  const last = { mark: 4, at: measured.at, figures: figuresUnder(one?.correction ?? null), madeWith };
  return { ...noDial({ id: 'iron', simulated: false }), chart, since: [measured], last };
}

/** The same numbers, but for rounding. */
function expectAlike(got: unknown, wanted: unknown): void {
  const rounded = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value, (_, v: unknown) => (typeof v === 'number' ? Math.round(v * 1e9) : v)));
  expect(rounded(got)).toEqual(rounded(wanted));
}

it('a correction can be taken out again', () => {
  for (const readC of [-20, 20, 177.3])
    expect(uncorrected(corrected(readC, second.correction), second.correction)).toBeCloseTo(readC, 12);
});

describe('what was measured under one calibration', () => {
  it.each([
    ['none', null, first],
    ['an earlier one', first, second],
  ] as const)('%s, is under another what it would have been measured as', (_, before, after) => {
    expectAlike(restatedDial(dialUnder(before), after, [first]), dialUnder(after));
  });

  it('comes back as it was where the earlier one is made again', () => {
    const there = restatedDial(dialUnder(first), second, [first]);
    const back = restatedDial(there, { ...first, id: 'third' }, [first, second]);
    expectAlike(back.chart.points[0]?.peakC, dialUnder(first).chart.points[0]?.peakC);
  });

  it('of another probe, typed, or by who knows which probe, stays as it is', () => {
    const dial = dialUnder(first);
    expect(restatedDial(dial, { ...second, probe: 'board/2' }, [first])).toEqual(dial);
    const unknown = { ...dial, chart: withPoint(emptyChart, point(4, 150)), since: [], last: null };
    expect(restatedDial(unknown, second, [first])).toEqual(unknown);
  });

  it('by a calibration that is not kept any more stays as it is', () => {
    expect(restatedDial(dialUnder(first), second, [])).toEqual(dialUnder(first));
  });
});
