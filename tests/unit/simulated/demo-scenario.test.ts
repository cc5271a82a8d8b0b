import { describe, expect, it } from 'vitest';
import { demoScenario } from '../../../daemon/probe/simulated/demo-scenario.ts';
import { bigIron } from '../../../daemon/probe/simulated/irons.ts';
import type { IronPlace } from '../../../daemon/probe/simulated/scenario.ts';
import { type Said, saidBy, simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { unknownProbe } from '../../../shared/thermometer/probe.ts';
import { restingGuardBandK } from '../../../shared/thermometer/trust.ts';
import { USUAL_CONFIDENCE } from '../../../shared/thermometer/uncertainty.ts';
import { fToC } from '../../../shared/units/temperature.ts';

const LIMIT_C = fToC(375);
const GUARDED_C =
  LIMIT_C -
  restingGuardBandK(
    {
      probe: { id: 'demo/1', label: 'demo', ...unknownProbe, calibration: null },
      iron: { id: 'demo', confidence: USUAL_CONFIDENCE },
    },
    LIMIT_C,
  );

const heard: Said[] = [];
for (const said of saidBy(simulateIron(bigIron, demoScenario, 1))) {
  if (said.tMs >= 2 * demoScenario.lengthS * 1000) break;
  heard.push(said);
}

const plateAt = (tS: number): number => heard[tS * 10]?.truth.plateC ?? Number.NaN;
const between = (fromS: number, toS: number): readonly Said[] => heard.slice(fromS * 10, toS * 10);
const plates = (some: readonly Said[]): readonly number[] => some.map((said) => said.truth.plateC);
const onWork = (some: readonly Said[]): readonly Said[] =>
  some.filter((said) => said.truth.place === 'on-work');
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b) / values.length;

/** The spans in which the plate is over a temperature, s. */
function spansOver(some: readonly Said[], c: number): readonly (readonly [number, number])[] {
  const spans: [number, number][] = [];
  let was = false;
  for (const { tMs, truth } of some) {
    if (truth.plateC > c && !was) spans.push([tMs / 1000, tMs / 1000]);
    was = truth.plateC > c;
    const last = spans.at(-1);
    if (was && last !== undefined) last[1] = tMs / 1000;
  }
  return spans;
}

describe('the demo scenario', () => {
  it('begins cold and reaches 250 degF in about two minutes', () => {
    expect(plateAt(0)).toBe(21);
    expect(plateAt(60)).toBeLessThan(fToC(250));
    const reachedS = heard.findIndex((said) => said.truth.plateC >= fToC(250)) / 10;
    expect(reachedS).toBeGreaterThan(80);
    expect(reachedS).toBeLessThan(130);
  });

  it('tacks and does the initial shrink about 250 degF, the final shrink about 350 degF', () => {
    expect(Math.abs(mean(plates(onWork(between(120, 210)))) - fToC(250))).toBeLessThan(6);
    expect(Math.abs(mean(plates(onWork(between(250, 584)))) - fToC(250))).toBeLessThan(4);
    expect(Math.abs(mean(plates(onWork(between(690, 834)))) - fToC(350))).toBeLessThan(4);
  });

  it('is on the work, lifted and on its rest by turns', () => {
    const turns = new Map<IronPlace, number>();
    let was: IronPlace | null = null;
    for (const { truth } of between(0, demoScenario.lengthS)) {
      if (truth.place !== was) turns.set(truth.place, (turns.get(truth.place) ?? 0) + 1);
      was = truth.place;
    }
    expect(turns.get('on-work')).toBe(21);
    expect(turns.get('lifted')).toBeGreaterThan(15);
    expect(turns.get('on-rest')).toBe(7);
  });

  it('passes the limit once a round, with the stuck thermostat, and stays clear of its guard band otherwise', () => {
    for (const round of [0, 1]) {
      const beginsS = round * demoScenario.lengthS;
      const some = between(beginsS, beginsS + demoScenario.lengthS);
      const [over, ...more] = spansOver(some, LIMIT_C);
      expect(more).toEqual([]);
      // The thermostat is stuck from 940 s to 980 s.
      expect(over?.[0]).toBeGreaterThan(beginsS + 945);
      expect(over?.[0]).toBeLessThan(beginsS + 970);
      expect(over?.[1]).toBeLessThan(beginsS + 1060);
      const [guarded, ...others] = spansOver(some, GUARDED_C);
      expect(others).toEqual([]);
      expect(guarded?.[0]).toBeGreaterThan(beginsS + 940);
      expect(Math.max(...plates(some))).toBeGreaterThan(198);
      expect(Math.max(...plates(some))).toBeLessThan(206);
    }
  });

  it('crosses the limit on the work', () => {
    expect(heard.find((said) => said.truth.plateC > LIMIT_C)?.truth.place).toBe('on-work');
  });

  it('is finished at final heat after that, and cold before it begins again', () => {
    expect(Math.abs(mean(plates(onWork(between(1085, 1178)))) - fToC(350))).toBeLessThan(5);
    expect(plateAt(demoScenario.lengthS - 10)).toBeLessThan(40);
    expect(plateAt(demoScenario.lengthS + 120)).toBeGreaterThan(fToC(250));
  });

  it('names its turns in order of time', () => {
    const times = demoScenario.turns.map((turn) => turn.atS);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });
});
