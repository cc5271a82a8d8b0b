import { describe, expect, it } from 'vitest';
import { followPlate, type ProbeTraits, probeText } from '../../../daemon/probe/simulated/probe.ts';

const quiet: ProbeTraits = { lagS: 2, noiseK: 0, resolutionK: 0.01, offsetK: 0 };
const textOf = (traits: ProbeTraits, junctionC: number): string => probeText(traits, junctionC, 1).text;

describe('the lag', () => {
  it('follows a ramp, in the end, by the time constant times the rate', () => {
    let junctionC = 20;
    for (let i = 0; i < 400; i++) {
      junctionC = followPlate(2, junctionC, { fromC: 20 + i * 0.05, toC: 20 + (i + 1) * 0.05, dtS: 0.1 });
    }
    expect(40 - junctionC).toBeCloseTo(2 * 0.5, 6);
  });

  it('over a ramp is the same in one step as in many', () => {
    let small = 25;
    for (let i = 0; i < 50; i++) small = followPlate(3, small, { fromC: 20 + i, toC: 21 + i, dtS: 0.2 });
    expect(followPlate(3, 25, { fromC: 20, toC: 70, dtS: 10 })).toBeCloseTo(small, 9);
  });

  it('over a curve that is taken as short ramps is off by the square of the step only', () => {
    // Plate 100 + 20 sin(t/10), lag 2 s: the lasting answer is the sine damped and delayed (first-order filter).
    const [w, lagS] = [0.1, 2];
    const plateC = (tS: number): number => 100 + 20 * Math.sin(w * tS);
    const exactC = (tS: number): number =>
      100 + (20 / Math.hypot(1, w * lagS)) * Math.sin(w * tS - Math.atan(w * lagS));
    const worst = [1, 0.1].map((dtS) => {
      let junctionC = exactC(0);
      let worstK = 0;
      for (let i = 1; i * dtS <= 60; i++) {
        junctionC = followPlate(lagS, junctionC, { fromC: plateC((i - 1) * dtS), toC: plateC(i * dtS), dtS });
        // Its start is on the lasting answer, so nothing has to die away first.
        worstK = Math.max(worstK, Math.abs(junctionC - exactC(i * dtS)));
      }
      return worstK;
    });
    expect(worst[0]).toBeLessThan(0.02);
    expect(worst[1]).toBeLessThan(0.02 / 50);
  });

  it('is none at 0 s', () => {
    expect(followPlate(0, 20, { fromC: 99, toC: 100, dtS: 0.1 })).toBe(100);
  });
});

describe('the number on the wire', () => {
  it('falls on the steps of the resolution, with as many decimals as they need', () => {
    expect(textOf({ ...quiet, resolutionK: 0.25 }, 150.13)).toBe('150.25');
    expect(textOf({ ...quiet, resolutionK: 0.25 }, 150.12)).toBe('150.00');
    expect(textOf({ ...quiet, resolutionK: 0.0625 }, 150.1)).toBe('150.1250');
    expect(textOf({ ...quiet, resolutionK: 1 }, 150.4)).toBe('150');
    expect(textOf({ ...quiet, resolutionK: 0.1 }, 150.04)).toBe('150.0');
    expect(textOf({ ...quiet, resolutionK: 0.01 }, 150.006)).toBe('150.01');
  });

  it('is never off by more than half a step, and never a minus nought', () => {
    for (let junctionC = -3; junctionC < 3; junctionC += 0.017) {
      const text = textOf({ ...quiet, resolutionK: 0.5 }, junctionC);
      expect(Math.abs(Number(text) - junctionC)).toBeLessThanOrEqual(0.25 + 1e-9);
      expect(text).not.toMatch(/^-0(\.0+)?$/);
    }
  });

  it('carries the offset', () => {
    expect(textOf({ ...quiet, offsetK: -1.5 }, 150)).toBe('148.50');
  });

  it('has the noise asked for, about the true value', () => {
    const traits = { ...quiet, noiseK: 0.3, offsetK: 0.7 };
    const values: number[] = [];
    let seed = 5;
    for (let i = 0; i < 20_000; i++) {
      const said = probeText(traits, 120, seed);
      seed = said.seed;
      values.push(Number(said.text));
    }
    const mean = values.reduce((a, b) => a + b) / values.length;
    const deviation = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
    // Five standard errors: s/sqrt(n) of the mean, s/sqrt(2n) of the deviation.
    expect(Math.abs(mean - 120.7)).toBeLessThan((5 * 0.3) / Math.sqrt(values.length));
    expect(Math.abs(deviation - 0.3)).toBeLessThan((5 * 0.3) / Math.sqrt(2 * values.length));
  });
});
