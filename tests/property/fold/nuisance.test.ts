import { describe, expect, test } from 'vitest';
import { varyIron } from '../../../daemon/probe/simulated/vary.ts';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import type { WatchSettings } from '../../../shared/watch/input.ts';
import { LIMIT_C, probeSettings, watchSettings } from '../../unit/watch/support/settings.ts';
import {
  drawer,
  type Heard,
  paced,
  swingingBy,
  watchOver,
  work,
} from '../../unit/watch/support/worked-iron.ts';

/**
 * An alarm that cries at every cycle is a defect. Simulated irons by seed, each with its own masses, heater,
 * thermostat, probe and board, worked for an hour with lifts and rests: once the first cycles are known there is no alarm
 * at all, as long as the plate's peaks stay under the limit.
 *
 * A slice of the seeds, with a line a second from most boards; `SOLEPLATE_SOAK=1` runs ten times as many at their own
 * pace.
 */
const soak = process.env['SOLEPLATE_SOAK'] === '1';
const seeds = (count: number): number[] => Array.from({ length: soak ? 10 * count : count }, (_, i) => i + 1);

interface Case {
  readonly swingK: number;
  readonly meanC: number;
  readonly settings: WatchSettings;
  readonly stageId: string;
}

const raised = (alarms: readonly Heard[], fromMs: number): string[] =>
  alarms
    .filter((a) => a.change === 'raised' && a.tMs > fromMs)
    .map((a) => `${a.alarm.kind} ${a.alarm.detail} at ${a.tMs / 1000} s`);

/** Watches an hour's work with the iron of a seed; the alarms after its second whole cycle. */
function hourOf(seed: number, { swingK, meanC, settings, stageId }: Case): string[] {
  const draw = drawer(seed * 7919);
  const base = soak ? varyIron(seed) : paced(varyIron(seed), seed % 8 === 0 ? 250 : 1000);
  const { traits, dialC, cycle } = swingingBy(base, swingK, meanC);
  const fromS = draw(100, 400);
  const watched = watchOver({
    traits,
    scenario: {
      name: 'An hour at the bench',
      ambientC: draw(10, 30),
      lengthS: 1e9,
      turns: [{ atS: 0, dialC }, ...work(fromS, fromS + 3600, draw)],
      faults: [],
    },
    settings,
    stageId,
    seed,
    lastsS: fromS + 3600,
    marksPlace: seed % 2 === 0,
    limitC: LIMIT_C,
  });
  // The case itself holds only where the peaks, as the probe reads them, are under the limit.
  const readC = Math.max(cycle.peakC, watched.highestC) + traits.probe.offsetK + 3 * traits.probe.noiseK;
  if (readC + traits.probe.resolutionK / 2 >= LIMIT_C) throw new Error('these peaks are not under the limit');
  const { cyclesKnownMs } = watched;
  // The slowest of them take ten minutes a cycle.
  if (cyclesKnownMs === null || cyclesKnownMs > 1_800_000) return ['its cycles were never found'];
  return raised(watched.alarms, cyclesKnownMs);
}

describe('an iron whose thermostat swings 50 °F around a mean on target, its peaks under the limit', () => {
  const targets = [
    { stageId: 'initial', meanC: fToC(250) },
    { stageId: 'intermediate', meanC: fToC(300) },
  ] as const;

  test.each(seeds(40).map((seed) => ({ seed, ...targets[seed % 2 === 0 ? 0 : 1] })))(
    'worked for an hour: seed $seed, $stageId',
    ({ seed, stageId, meanC }) => {
      const swingK = (50 * 5) / 9;
      expect(hourOf(seed, { swingK, meanC, settings: watchSettings(), stageId })).toEqual([]);
    },
  );
});

describe('one whose peaks come to a few kelvins under the limit, whatever its swing', () => {
  test.each(seeds(10))('worked for an hour: seed %i', (seed) => {
    const draw = drawer(seed * 65_537);
    const swingK = draw(8, 30);
    const meanC = LIMIT_C - swingK / 2 - draw(4, 7);
    const [stage] = shippedSchedule.stages;
    if (stage === undefined) throw new Error('no stage');
    const own = { ...stage, id: 'own', lowC: meanC - 8.3, targetC: meanC, highC: meanC + 8.3 };
    const settings = watchSettings([probeSettings()], { stages: [own] });
    expect(hourOf(seed + 1000, { swingK, meanC, settings, stageId: 'own' })).toEqual([]);
  });
});
