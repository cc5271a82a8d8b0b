import { describe, expect, it } from 'vitest';
import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { varyIron } from '../../../daemon/probe/simulated/vary.ts';

const irons = Array.from({ length: 60 }, (_, seed) => varyIron(seed));
const spread = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
];

describe('varied irons', () => {
  it('are the same for the same seed', () => {
    expect(varyIron(17)).toEqual(irons[17]);
    expect(varyIron(18)).not.toEqual(irons[17]);
  });

  it('swing 10 to 30 K at the plate on the rest, and use that range', () => {
    const swings = irons.map(({ body }) => {
      const cycle = settledCycle(body, { ambientC: 21, dialC: 150, onWork: false, runaway: false });
      return cycle.peakC - cycle.troughC;
    });
    const [least, most] = spread(swings);
    expect(least).toBeGreaterThan(10);
    expect(least).toBeLessThan(14);
    expect(most).toBeGreaterThan(26);
    expect(most).toBeLessThan(30);
  });

  it('can hold the final stage on the work', () => {
    for (const { body } of irons) {
      const cycle = settledCycle(body, { ambientC: 21, dialC: 177, onWork: true, runaway: false });
      expect(cycle.meanC).toBeGreaterThan(150);
    }
  });

  it('spread over heaters, lags, resolutions, periods, both thermostats, with and without motion', () => {
    const [weak, strong] = spread(irons.map((i) => i.body.heaterW));
    expect(weak).toBeGreaterThanOrEqual(500);
    expect(weak).toBeLessThan(600);
    expect(strong).toBeLessThanOrEqual(1500);
    expect(strong).toBeGreaterThan(1400);
    const [quick, slow] = spread(irons.map((i) => i.probe.lagS));
    expect(quick).toBeGreaterThanOrEqual(0.5);
    expect(slow).toBeLessThanOrEqual(6);
    expect(slow - quick).toBeGreaterThan(4);
    expect(new Set(irons.map((i) => i.probe.resolutionK)).size).toBe(6);
    expect(new Set(irons.map((i) => i.wire.periodMs)).size).toBe(5);
    expect(new Set(irons.map((i) => i.body.thermostatOn)).size).toBe(2);
    expect(new Set(irons.map((i) => i.wire.motion)).size).toBe(2);
  });
});
