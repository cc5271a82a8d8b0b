import { describe, expect, it } from 'vitest';
import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { swingingIron } from '../../../daemon/probe/simulated/irons.ts';
import { emptyChart, meanAt, peakAt, pointOf, withPoint } from '../../../shared/iron/dial/chart.ts';
import { HOUSEHOLD_MEAN_C } from '../../../shared/thermometer/suspect-probe.ts';
import { dialFigureWords } from '../../../shared/words/dial.ts';
import { evennessWords } from '../../../shared/words/evenness.ts';
import { json, rows } from '../data.ts';
import { sittingOf, stretchOf } from './left-on-rest.ts';
import { ironAt, printedK, published, room } from './published-iron.ts';

/** One measured household iron, and what the standards measure of irons. Sources and standing: data/7_irons/SOURCES.md. */

describe('a measured household iron, USA about 1986: Schneider (seen)', () => {
  it('has three settings', () => {
    expect(published.map((p) => p.mark)).toEqual([3, 4, 5]);
  });

  const probes = [
    { resolutionK: 0.25, lagS: 0.5 },
    { resolutionK: 0.5, lagS: 1.5 },
  ];
  it.each(probes.flatMap((probe) => published.map((row) => ({ ...probe, ...row }))))(
    'comes back at $mark through a probe of $resolutionK K: mean, peaks and troughs',
    ({ resolutionK, lagS, ...row }) => {
      const { body, dialC } = ironAt(row);
      const probe = { ...swingingIron.probe, resolutionK, lagS };
      const wire = { ...swingingIron.wire, periodMs: 250 };
      const truth = settledCycle(body, { ...room, dialC });
      const run = { forS: 260 + 10.5 * truth.periodS, seed: 3 };
      const found = sittingOf({ ...swingingIron, body, probe, wire }, { dialC, mark: row.mark }, run);
      const point = pointOf(stretchOf(found), row.mark, '2026-05-01T09:00:00Z', { lagS, madeWith: null });
      const chart = withPoint(emptyChart, point);
      expect(point.cycles).toBeGreaterThanOrEqual(8);
      // The published middle one is the middle of the other two; the mean over time is the simulated iron's own.
      expect(Math.abs((meanAt(chart, row.mark) ?? 0) - truth.meanC)).toBeLessThan(resolutionK);
      expect(Math.abs((peakAt(chart, row.mark) ?? 0) - row.highC)).toBeLessThan(resolutionK);
      expect(Math.abs((point.troughC ?? 0) - row.lowC)).toBeLessThan(printedK);
    },
    20_000,
  );
});

describe('what the standards measure (GOST 307.2-95, contents; IEC 60311)', () => {
  const { measured_items } = json('7_irons/iron_test_terms.json') as {
    readonly measured_items: readonly { readonly item: string }[];
  };

  it('is what the figures are called', () => {
    const { heatingUp, excess, mean, fluctuation, load } = dialFigureWords;
    // The two of 5.5 have their own place, and are named there in full.
    for (const { item } of measured_items.filter(({ item }) => /evenness|hottest/.test(item)))
      expect(evennessWords.named).toContain(item.replace(' of the soleplate', ''));
    for (const name of [heatingUp, excess, mean, fluctuation, load]) {
      const words = name.toLowerCase().split(' ');
      expect(measured_items.some(({ item }) => words.every((w) => item.split(/[ ,()]+/).includes(w)))).toBe(
        true,
      );
    }
  });
});

it('no mean that is called odd lies among what irons are allowed or measured to have: ISO 3758 (seen), Schneider', () => {
  const dotsC = rows('7_irons/care_label_dots.csv').map((row) => Number(row[1]));
  expect(dotsC).toEqual([110, 150, 200]);
  const widestK = Math.max(...published.map((p) => p.highC - p.lowC));
  for (const c of [...dotsC, ...published.flatMap((p) => [p.lowC, p.midC, p.highC])]) {
    expect(c - widestK / 2).toBeGreaterThan(HOUSEHOLD_MEAN_C.min);
    expect(c + widestK / 2).toBeLessThan(HOUSEHOLD_MEAN_C.max);
  }
});
