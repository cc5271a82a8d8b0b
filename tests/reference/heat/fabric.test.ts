import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FABRIC_ROOM_C, FABRIC_TAU_S, followFabric } from '../../../shared/heat/work/fabric.ts';
import { rows } from '../data.ts';

/** The fabric against the first-order response, 1 - exp(-t/tau): mathematical. See data/5_first_order_lag/SOURCES.md. */
const steps = rows('5_first_order_lag/first_order_step.csv').map((row) => row.map(Number));

describe('fabric under a plate that stays as it is', () => {
  it.each(steps)(
    'has covered after %d time constants %d of the step, printed as %d %%',
    (times, part, percent) => {
      const plateC = 177;
      const fabricC = followFabric(FABRIC_ROOM_C, plateC, times * FABRIC_TAU_S);
      const covered = (fabricC - FABRIC_ROOM_C) / (plateC - FABRIC_ROOM_C);
      expect(covered).toBeCloseTo(part, 9);
      expect(covered * 100).toBeCloseTo(percent, 1);
    },
  );

  it('comes to the same in two parts as in one, and never goes beyond the plate', () => {
    const temperature = fc.double({ min: -20, max: 400, noNaN: true });
    const time = fc.double({ min: 0, max: 600, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, time, time, (fabricC, plateC, a, b) => {
        const whole = followFabric(fabricC, plateC, a + b);
        expect(followFabric(followFabric(fabricC, plateC, a), plateC, b)).toBeCloseTo(whole, 9);
        expect(whole).toBeGreaterThanOrEqual(Math.min(fabricC, plateC) - 1e-9);
        expect(whole).toBeLessThanOrEqual(Math.max(fabricC, plateC) + 1e-9);
      }),
    );
  });

  it('stands still where no time passes', () => {
    expect(followFabric(20, 177, 0)).toBe(20);
    expect(followFabric(20, 177, -3)).toBe(20);
    expect(followFabric(20, 177, Number.NaN)).toBe(20);
  });

  // Our own starting value: a brush past of a quarter of a second brings cloth from the room nowhere near 250 degF.
  it('counts a brush past for little', () => {
    expect(followFabric(FABRIC_ROOM_C, 177, 0.25)).toBeLessThan(60);
    expect(followFabric(FABRIC_ROOM_C, 177, 3)).toBeGreaterThan(165);
  });
});
