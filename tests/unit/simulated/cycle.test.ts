import { describe, expect, it } from 'vitest';
import { dialForMean, settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { demoIrons, swingingIron } from '../../../daemon/probe/simulated/irons.ts';
import { atRest, heaterAlone, roundBody } from './bodies.ts';

describe('the settled cycle', () => {
  it('is the closed form for one mass', () => {
    // The plate is not there to be seen, so the plate alone, driven through a strong coupling, stands for one mass.
    const body = { ...roundBody, couplingWPerK: 1e5, heaterLossWPerK: 0.5, plateLossWPerK: 0.8 };
    const tauS = 850 / 1.3;
    const steadyC = 20 + 1000 / 1.3;
    const onS = tauS * Math.log((steadyC - 145) / (steadyC - 155));
    const offS = tauS * Math.log((155 - 20) / (145 - 20));
    const cycle = settledCycle(body, atRest(150));
    expect(Math.abs(cycle.periodS - onS - offS)).toBeLessThan(0.2);
    expect(cycle.peakC).toBeCloseTo(155, 1);
    expect(cycle.troughC).toBeCloseTo(145, 1);
    // Mean over time of both exponentials: (integral of each) / period.
    const on = steadyC * onS - tauS * (155 - 145);
    const off = 20 * offS + tauS * (155 - 145);
    expect(cycle.meanC).toBeCloseTo((on + off) / (onS + offS), 1);
  });

  it('has its peak above and its trough below the edges where the thermostat feels the plate', () => {
    const cycle = settledCycle(roundBody, atRest(150));
    expect(cycle.peakC).toBeGreaterThan(155);
    expect(cycle.troughC).toBeLessThan(145);
  });

  it('is refused where the iron is too weak to reach the setting', () => {
    expect(() => settledCycle({ ...heaterAlone, heaterW: 20 }, atRest(150))).toThrow(/no thermostat cycle/);
  });
});

describe('the dial for a mean', () => {
  it('gives that mean, on the rest and on the work', () => {
    for (const { body } of demoIrons) {
      for (const onWork of [false, true]) {
        const around = { ambientC: 21, onWork, runaway: false };
        const dialC = dialForMean(body, 150, around);
        expect(settledCycle(body, { ...around, dialC }).meanC).toBeCloseTo(150, 1);
      }
    }
  });
});

describe('the swinging demo iron', () => {
  it('swings some 50 degF (28 K) at the plate over the whole dial', () => {
    for (const dialC of [121, 149, 177]) {
      const { peakC, troughC } = settledCycle(swingingIron.body, { ...atRest(dialC), ambientC: 21 });
      expect(Math.abs(peakC - troughC - 28)).toBeLessThan(1.5);
    }
  });
});
