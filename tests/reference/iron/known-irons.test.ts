import { describe, expect, test } from 'vitest';
import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { demoIrons, type IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import { varyIron } from '../../../daemon/probe/simulated/vary.ts';
import { lagAllowanceK } from '../../../shared/iron/dial/lag.ts';
import { sittingOf, stretchOf } from './left-on-rest.ts';

/** What is found of simulated irons, through their probes' lag, noise and resolution, against what they truly do. */

const room = { ambientC: 21, onWork: false, runaway: false };

function errorsOf(traits: IronTraits, dialC: number, seed: number) {
  const truth = settledCycle(traits.body, { ...room, dialC });
  const forS = 260 + 10.5 * truth.periodS;
  const { figures } = stretchOf(sittingOf(traits, { dialC, mark: 3 }, { forS, seed }));
  const { offsetK, lagS } = traits.probe;
  return {
    cycles: figures.cycles,
    meanK: figures.meanC - truth.meanC - offsetK,
    peakK: figures.peakC - truth.peakC - offsetK,
    troughK: figures.troughC - truth.troughC - offsetK,
    periodS: figures.periodS - truth.periodS,
    duty: figures.duty - truth.rising,
    allowanceK: lagAllowanceK(figures, lagS),
  };
}

describe.each(demoIrons.map((iron) => [iron.name, iron] as const))('%s', (_, traits) => {
  test.each([
    [121, 1],
    [150, 2],
    [177, 3],
  ])(
    'at a dial of %i, seed %i',
    (dialC, seed) => {
      const errors = errorsOf(traits, dialC, seed);
      const turnK = Math.max(0.25, traits.probe.resolutionK);
      expect(errors.cycles).toBeGreaterThanOrEqual(8);
      expect(Math.abs(errors.meanK)).toBeLessThan(0.1);
      expect(Math.abs(errors.peakK)).toBeLessThan(turnK);
      expect(Math.abs(errors.troughK)).toBeLessThan(turnK);
      expect(Math.abs(errors.periodS)).toBeLessThan(0.5);
      // Whole degrees on a swing of 6 K hide where in a flat the plate turned: some seconds of a cycle of half a minute.
      expect(Math.abs(errors.duty)).toBeLessThan(traits.probe.resolutionK < 1 ? 0.03 : 0.2);
      // What the lag hides is allowed for.
      expect(-errors.peakK).toBeLessThan(errors.allowanceK);
    },
    20_000,
  );
});

test.each([1, 2, 3, 4, 7, 8, 9, 10, 11, 12])(
  'varied iron %i, lags up to 6 s: mean and cycle are right, peaks fall short by no more than is allowed for',
  (seed) => {
    const errors = errorsOf(varyIron(seed), 150, seed);
    expect(errors.cycles).toBeGreaterThanOrEqual(8);
    expect(Math.abs(errors.meanK)).toBeLessThan(0.1);
    expect(Math.abs(errors.periodS)).toBeLessThan(0.5);
    expect(errors.peakK).toBeLessThan(0.2);
    expect(-errors.peakK).toBeLessThan(errors.allowanceK + 0.1);
  },
  20_000,
);
