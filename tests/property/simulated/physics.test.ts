import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanceBody,
  type BodyState,
  type IronBody,
  type Surroundings,
} from '../../../daemon/probe/simulated/physics.ts';
import { followPlate } from '../../../daemon/probe/simulated/probe.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const bodies: fc.Arbitrary<IronBody> = fc.record({
  heaterW: between(50, 2000),
  heaterMassJPerK: between(20, 1000),
  plateMassJPerK: between(20, 2000),
  couplingWPerK: fc.oneof(fc.constant(0), between(0.001, 200)),
  heaterLossWPerK: between(0.05, 3),
  plateLossWPerK: between(0.05, 3),
  clothWPerK: between(0, 10),
  thermostatOn: fc.constantFrom('heater', 'plate'),
  hysteresisK: between(0.5, 60),
});

const surroundings: fc.Arbitrary<Surroundings> = fc.record({
  ambientC: between(-10, 45),
  dialC: fc.option(between(50, 220)),
  onWork: fc.boolean(),
  runaway: fc.boolean(),
});

/** Heater on for ever, nothing drawn by the work: no iron gets hotter. From the heat balance of both masses. */
function hottest(b: IronBody, ambientC: number): { heaterC: number; plateC: number } {
  const throughPlate = b.couplingWPerK === 0 ? 0 : 1 / (1 / b.couplingWPerK + 1 / b.plateLossWPerK);
  const riseK = b.heaterW / (b.heaterLossWPerK + throughPlate);
  return { heaterC: ambientC + riseK, plateC: ambientC + (riseK * throughPlate) / b.plateLossWPerK };
}

const walk = fc.tuple(bodies, surroundings, fc.array(between(0, 30), { minLength: 1, maxLength: 30 }));

describe('an iron', () => {
  it('that begins cold stays between the air and what its heater can reach, whatever is done with it', () => {
    const turns = fc.array(
      fc.record({
        dialC: fc.option(between(50, 220)),
        onWork: fc.boolean(),
        runaway: fc.boolean(),
        dtS: between(0, 300),
      }),
      { minLength: 1, maxLength: 20 },
    );
    fc.assert(
      fc.property(bodies, between(-10, 45), turns, (body, ambientC, turns) => {
        const top = hottest(body, ambientC);
        let state: BodyState = { heaterC: ambientC, plateC: ambientC, heaterOn: false };
        for (const { dtS, ...turn } of turns) {
          state = advanceBody(body, state, { ambientC, ...turn }, dtS);
          expect(state.heaterC).toBeGreaterThanOrEqual(ambientC - 1e-6);
          expect(state.plateC).toBeGreaterThanOrEqual(ambientC - 1e-6);
          expect(state.heaterC).toBeLessThanOrEqual(top.heaterC + 1e-6);
          expect(state.plateC).toBeLessThanOrEqual(top.plateC + 1e-6);
        }
      }),
    );
  });

  it('is where it is however the time was cut', () => {
    fc.assert(
      fc.property(walk, ([body, around, steps]) => {
        const cold: BodyState = { heaterC: around.ambientC, plateC: around.ambientC, heaterOn: false };
        const whole = advanceBody(
          body,
          cold,
          around,
          steps.reduce((a, b) => a + b),
        );
        const cut = steps.reduce((state, dtS) => advanceBody(body, state, around, dtS), cold);
        expect(cut.plateC).toBeCloseTo(whole.plateC, 4);
        expect(cut.heaterC).toBeCloseTo(whole.heaterC, 4);
      }),
    );
  });

  it('cools when it is switched off', () => {
    fc.assert(
      fc.property(bodies, between(30, 250), between(0.01, 50), (body, startC, dtS) => {
        const around: Surroundings = { ambientC: 20, dialC: null, onWork: true, runaway: false };
        const after = advanceBody(body, { heaterC: startC, plateC: startC, heaterOn: true }, around, dtS);
        expect(after.heaterC).toBeLessThan(startC);
        expect(after.plateC).toBeLessThan(startC);
      }),
    );
  });
});

describe('a probe', () => {
  it('reads between where it was and where the plate has been', () => {
    fc.assert(
      fc.property(
        between(0.001, 20),
        between(-20, 300),
        fc.record({ fromC: between(-20, 300), toC: between(-20, 300), dtS: between(0, 10) }),
        (lagS, junctionC, plate) => {
          const after = followPlate(lagS, junctionC, plate);
          expect(after).toBeGreaterThanOrEqual(Math.min(junctionC, plate.fromC, plate.toC) - 1e-9);
          expect(after).toBeLessThanOrEqual(Math.max(junctionC, plate.fromC, plate.toC) + 1e-9);
        },
      ),
    );
  });
});
