import { describe, expect, it } from 'vitest';
import { dialForMean, settledCycle } from '../../daemon/probe/simulated/cycle.ts';
import { swingingIron } from '../../daemon/probe/simulated/irons.ts';
import { advanceBody, coldBody, type IronBody } from '../../daemon/probe/simulated/physics.ts';
import { followPlate } from '../../daemon/probe/simulated/probe.ts';
import { json, rows } from './data.ts';

/**
 * The simulated iron against textbook problems (Cengel; Kreith and Bohn), the lag of a first-order system, and one
 * measured household iron (Schneider). Sources and standing: data/7_irons/SOURCES.md.
 */

interface Example {
  readonly id: string;
  readonly given: Readonly<Record<string, number>>;
  readonly expect: Readonly<Record<string, { readonly value: string; readonly status: string }>>;
}
const examples = json('7_irons/iron_heat_worked_examples.json') as readonly Example[];

function example(id: string): {
  readonly given: (key: string) => number;
  readonly printed: (key: string) => number;
} {
  const found = examples.find((e) => e.id === id);
  return {
    given: (key) => known(found?.given[key]),
    printed: (key) => known(Number(found?.expect[key]?.value)),
  };
}

function known(value: number | undefined): number {
  if (value === undefined || Number.isNaN(value)) throw new Error('not in the data');
  return value;
}

/** A plate heated right through, as the problems have it: the heater body alone, which has the element. */
const lumped = (heaterW: number, massJPerK: number, lossWPerK: number): IronBody => ({
  heaterW,
  heaterMassJPerK: massJPerK,
  heaterLossWPerK: lossWPerK,
  plateMassJPerK: 1,
  couplingWPerK: 0,
  plateLossWPerK: 0,
  clothWPerK: 0,
  thermostatOn: 'heater',
  hysteresisK: 1,
});

/** Seconds from cold to `targetC` with the heater on, to a millisecond. */
function heatUpS(body: IronBody, ambientC: number, targetC: number): number {
  const around = { ambientC, dialC: null, onWork: false, runaway: true };
  let state = coldBody(ambientC);
  for (let ms = 0; ; ms++) {
    if (state.heaterC >= targetC) return ms / 1000;
    state = advanceBody(body, state, around, 0.001);
  }
}

describe('heating-up time', () => {
  it('of a 1000 W iron to 140 degC: Cengel, problem 4-15 (statement and mass seen, times computed)', () => {
    const { given, printed } = example('cengel-4-iron');
    const massKg = given('rho_kg_m3') * given('area_m2') * given('thickness_m');
    expect(massKg).toBeCloseTo(printed('plate_mass_kg'), 4);
    const heatW = given('power_w') * given('fraction_to_plate');
    const massJPerK = massKg * given('cp_j_kg_k');
    const s = (lossWPerK: number) =>
      heatUpS(lumped(heatW, massJPerK, lossWPerK), given('ambient_c'), given('target_c'));
    expect(s(0)).toBeCloseTo(printed('time_no_loss_s'), 2);
    expect(s(given('h_w_m2_k') * given('area_m2'))).toBeCloseTo(printed('time_s'), 1);
  });

  it('of a 1.4 kg, 500 W iron to 104 degC: Kreith and Bohn (statement seen, time computed)', () => {
    const { given, printed } = example('kreith-iron');
    const lossWPerK = given('h_w_m2_k') * given('area_m2');
    const body = lumped(given('power_w'), given('mass_kg') * given('cp_j_kg_k'), lossWPerK);
    expect(Math.abs(heatUpS(body, given('ambient_c'), given('target_c')) - printed('time_s'))).toBeLessThan(
      0.1,
    );
  });
});

describe('steady heat through the base plate', () => {
  it('of an 800 W iron, outer face 85 degC: Cengel, problem 2-59 (seen)', () => {
    // The plate's conductance k A / L is the coupling; its outer face loses just what keeps it at 85 degC.
    const { given, printed } = example('cengel-2-59-iron');
    expect(given('power_w') / given('area_m2')).toBeCloseTo(printed('flux_w_m2'), 6);
    const body: IronBody = {
      ...lumped(given('power_w'), 100, 0),
      plateMassJPerK: 300,
      couplingWPerK: (given('k_w_m_k') * given('area_m2')) / given('thickness_m'),
      plateLossWPerK: given('power_w') / (given('outer_c') - 20),
    };
    const around = { ambientC: 20, dialC: null, onWork: false, runaway: true };
    const steady = advanceBody(body, coldBody(20), around, 3600);
    expect(steady.plateC).toBeCloseTo(given('outer_c'), 6);
    expect(steady.heaterC).toBeCloseTo(printed('inner_c'), 6);
  });
});

describe('first-order lag', () => {
  it('covers 63.2 % of a step in one time constant, and the rest as printed (mathematical)', () => {
    const steps = rows('5_first_order_lag/first_order_step.csv');
    expect(steps).toHaveLength(8);
    for (const row of steps) {
      const [times, fraction, percent] = row.map(Number);
      const lagS = 2.5;
      let junctionC = 20;
      const steps = 1000;
      for (let i = 0; i < steps; i++) {
        junctionC = followPlate(lagS, junctionC, {
          fromC: 120,
          toC: 120,
          dtS: (known(times) * lagS) / steps,
        });
      }
      expect((junctionC - 20) / 100).toBeCloseTo(known(fraction), 9);
      expect(junctionC - 20).toBeCloseTo(known(percent), 1);
    }
  });
});

describe('the swinging demo iron', () => {
  it('has peaks and troughs like a measured household iron: Schneider (seen)', () => {
    const settings = rows('7_irons/iron_dial_vs_temperature.csv');
    expect(settings).toHaveLength(3);
    for (const row of settings) {
      // The label of the first column holds a comma.
      const [lowC, medianC, highC] = row.slice(-3).map(Number);
      const around = { ambientC: 21, onWork: false, runaway: false };
      const dialC = dialForMean(swingingIron.body, known(medianC), around);
      const cycle = settledCycle(swingingIron.body, { ...around, dialC });
      // An invented iron: it need only be as wide as the measured one, to within 3 K.
      expect(Math.abs(cycle.troughC - known(lowC))).toBeLessThan(3);
      expect(Math.abs(cycle.peakC - known(highC))).toBeLessThan(3);
    }
  });
});
