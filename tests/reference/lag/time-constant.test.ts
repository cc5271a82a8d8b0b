import { describe, expect, it } from 'vitest';
import { stepAnswerC } from '../../../shared/thermometer/lag/step.ts';
import { timeConstantOf } from '../../../shared/thermometer/lag/time-constant.ts';
import { json, rows } from '../data.ts';

/** The lag of a probe against closed forms and a textbook problem. Sources and standing: data/5_first_order_lag/SOURCES.md. */

interface Example {
  readonly id: string;
  readonly given: Readonly<Record<string, number>>;
  readonly expect: Readonly<Record<string, number>>;
}

const steps = rows('5_first_order_lag/first_order_step.csv');

/** A step of 100 K at 5 s, written down ten times a second by 1 - exp(-t/tau) itself. */
const recordOf = (tauS: number) =>
  Array.from({ length: 1 + Math.round((5 + 8 * tauS) * 10) }, (_, i) => {
    const sinceS = i / 10 - 5;
    return { tMs: i * 100, tC: sinceS <= 0 ? 20 : 20 + 100 * (1 - Math.exp(-sinceS / tauS)) };
  });

describe('a first-order step', () => {
  it('covers what is printed after so many time constants: 1 - exp(-t/tau) (mathematical)', () => {
    expect(steps).toHaveLength(8);
    for (const row of steps) {
      const [times = Number.NaN, fraction = Number.NaN, percent = Number.NaN] = row.map(Number);
      const curve = { startC: 0, riseK: 1, onsetS: 0, tauS: 2.5, driftKPerS: 0, bendKPerS2: 0 };
      const covered = stepAnswerC(curve, times * 2.5);
      expect(covered).toBeCloseTo(fraction, 9);
      expect(covered * 100).toBeCloseTo(percent, 1);
    }
  });

  it.each([0.4, 1, 2.5, 6, 20])('gives back its time constant of %d s, where 63.2 % are covered', (tauS) => {
    const result = timeConstantOf(recordOf(tauS));
    if (result.kind !== 'found') return expect.unreachable(result.refusal.reason);
    const { found } = result;
    expect(found.tauS).toBeCloseTo(tauS, 5);
    expect(found.onsetMs).toBeCloseTo(5000, 1);
    // The definition by which ASTM E839 and IEC 60751 test (recalled): 1 - 1/e of the step after one time constant.
    const curve = { startC: 20, riseK: 100, onsetS: 5, tauS: found.tauS, driftKPerS: 0, bendKPerS2: 0 };
    expect((stepAnswerC(curve, 5 + found.tauS) - 20) / 100).toBeCloseTo(0.63212, 5);
  });
});

describe('a thermocouple junction of 1 mm in a gas stream: Cengel, Example 4-1 (seen)', () => {
  const examples = json('5_first_order_lag/first_order_worked_examples.json') as readonly Example[];
  const { given, expect: printed } = examples.find((e) => e.id === 'cengel-thermocouple-bead') ?? {
    given: {},
    expect: {},
  };
  const of = (values: Readonly<Record<string, number>>, key: string): number => values[key] ?? Number.NaN;

  it('comes out of its recorded step with the printed exponent and time to 99 %', () => {
    const lengthM = of(given, 'diameter_m') / 6;
    expect(lengthM).toBeCloseTo(of(printed, 'Lc_m'), 6);
    // Lumped only where the Biot number is small.
    expect((of(given, 'h') * lengthM) / of(given, 'k')).toBeCloseTo(of(printed, 'biot'), 4);
    const result = timeConstantOf(recordOf((of(given, 'rho') * of(given, 'cp') * lengthM) / of(given, 'h')));
    if (result.kind !== 'found') return expect.unreachable(result.refusal.reason);
    // Printed from a length rounded to 0.000167 m: 0.462, where the figures themselves give 0.463.
    expect(Math.abs(1 / result.found.tauS - of(printed, 'b_per_s'))).toBeLessThan(0.0015);
    expect(Math.round(result.found.tauS * Math.log(100))).toBe(of(printed, 't99_s'));
  });
});
