import { describe, expect, it, test } from 'vitest';
import { boilingPointC, saturationPressureHpa } from '../../../shared/calibration/boiling.ts';
import { deficitPa, dewPointC, marginK, saturationPa, vapourPa } from '../../../shared/cure/humid-air.ts';
import { json, record, rows } from '../data.ts';

/** Humid air against published tables. Sources and standing: data/2_water_air/SOURCES.md. */

/** ASHRAE says that its formula is within this of its table 3. */
const ASHRAE_WITHIN = 300e-6;
const relative = (ours: number, theirs: number): number => Math.abs(ours / theirs - 1);

describe('saturation pressure', () => {
  const table = rows('2_water_air/saturation_0_100C.csv');
  it('has all 21 rows', () => expect(table).toHaveLength(21));

  it.each(table)('every 5 K: %s degC', (t, textbookKpa = '', ohioMpa = '', ashraePa = '', if97Kpa = '') => {
    const pa = saturationPa(Number(t));
    // ASHRAE 2017 ch. 1 table 3 (seen).
    if (ashraePa !== '') expect(relative(pa, Number(ashraePa))).toBeLessThan(ASHRAE_WITHIN);
    // Another formulation, IAPWS-IF97 (computed); Cengel and Boles table A-4 (recalled).
    expect(relative(pa / 1000, Number(if97Kpa))).toBeLessThan(3e-4);
    expect(relative(pa / 1000, Number(textbookKpa))).toBeLessThan(4e-4);
    // Steam table of Ohio University (seen): within a printed digit, since some of its rows are cut, not rounded.
    if (ohioMpa !== '') expect(Math.abs(pa / 1e6 - Number(ohioMpa))).toBeLessThan(1e-5 + pa * 3e-10);
  });

  const { saturation_pressure_pa } = record(
    '2_water_air/psychrometric_examples.json',
    'ASHRAE-2017-F01-T3',
  ) as { saturation_pressure_pa: Record<string, number> };
  it.each(Object.entries(saturation_pressure_pa))(
    'ASHRAE 2017 ch. 1 table 3 (seen): at %s degC %d Pa',
    (c, pa) => {
      // 1.08 Pa at -60 degC has three digits only.
      const printed = pa < 10 ? 0.005 / pa : 0;
      expect(relative(saturationPa(Number(c)), pa)).toBeLessThan(ASHRAE_WITHIN + printed);
    },
  );

  test('IAPWS R7-97(2012) table 35 (seen): 300 K; the other two of its rows are beyond what air can be', () => {
    const { table35_psat } = json('2_water_air/iapws_if97_region4.json') as {
      table35_psat: readonly { T_K: number; p_MPa: number }[];
    };
    const row = table35_psat.find(({ T_K }) => T_K === 300);
    if (row === undefined) return expect.unreachable();
    expect(relative(saturationPa(300 - 273.15), row.p_MPa * 1e6)).toBeLessThan(3e-4);
  });

  test('agrees with the saturation line of IF97 that boiling points go by, and so do its dew points', () => {
    for (let c = 0.1; c <= 60; c += 0.1) {
      const if97Pa = (saturationPressureHpa(c) ?? Number.NaN) * 100;
      expect(relative(saturationPa(c), if97Pa)).toBeLessThan(3e-4);
      const dewC = dewPointC({ airC: c + 10, rhPct: (saturationPa(c) / saturationPa(c + 10)) * 100 });
      expect(Math.abs((dewC ?? Number.NaN) - c)).toBeLessThan(0.002);
      expect(Math.abs((boilingPointC(saturationPa(c) / 100) ?? Number.NaN) - c)).toBeLessThan(0.006);
    }
  });
});

test('WMO-No. 8 annex 4.B (coefficients seen): the Magnus formulas over water and ice agree within 0.5 %', () => {
  type Magnus = { form: string; a: number; b: number; c: number; range_c: readonly [number, number] };
  const formulas = json('2_water_air/magnus_coefficients.json') as readonly Magnus[];
  expect(formulas).toHaveLength(2);
  for (const { form, a, b, c, range_c } of formulas) {
    const ice = form.includes('ice');
    // Over water below freezing is another curve: the library's is over ice there.
    const [from, to] = ice ? [-40, 0] : [0.1, range_c[1]];
    for (let t = from; t <= to; t += 0.5)
      expect(relative(saturationPa(t), 100 * a * Math.exp((b * t) / (c + t)))).toBeLessThan(5e-3);
  }
});

interface Example {
  readonly given: {
    readonly dry_bulb_c: number;
    readonly wet_bulb_c: number;
    readonly pressure_pa: number;
  };
  readonly expect: Printed;
  readonly tolerance: Printed;
}
interface Printed {
  readonly humidity_ratio: number;
  readonly dew_point_c: number;
  readonly rh: number;
}

describe('ASHRAE 2017 ch. 1', () => {
  test('example 1 (seen): dry bulb 40, wet bulb 20 degC', () => {
    const {
      given,
      expect: printed,
      tolerance,
    } = record('2_water_air/psychrometric_examples.json', 'ASHRAE-2017-F01-Ex1') as Example;
    const { dry_bulb_c: dry, wet_bulb_c: wet, pressure_pa } = given;
    const ratioAt = (pa: number): number => (0.621945 * pa) / (pressure_pa - pa);
    // The humidity ratio from the wet bulb: ASHRAE's equation 33 (from memory, proved by the printed ratio).
    const ratio =
      ((2501 - 2.326 * wet) * ratioAt(saturationPa(wet)) - 1.006 * (dry - wet)) /
      (2501 + 1.86 * dry - 4.186 * wet);
    expect(Math.abs(ratio - printed.humidity_ratio)).toBeLessThan(tolerance.humidity_ratio);
    const rhPct = ((ratio * pressure_pa) / (0.621945 + ratio) / saturationPa(dry)) * 100;
    expect(Math.abs(rhPct / 100 - printed.rh)).toBeLessThan(tolerance.rh);
    const dewC = dewPointC({ airC: dry, rhPct }) ?? Number.NaN;
    expect(Math.abs(dewC - printed.dew_point_c)).toBeLessThan(tolerance.dew_point_c);
  });

  const { saturated_humidity_ratio_101325Pa } = record(
    '2_water_air/psychrometric_examples.json',
    'ASHRAE-2017-F01-T2',
  ) as {
    saturated_humidity_ratio_101325Pa: Record<string, number>;
  };
  it.each(Object.entries(saturated_humidity_ratio_101325Pa))(
    'table 2 (seen): saturated at %s degC %d kg/kg, to 1 % without the enhancement of real air',
    (c, ratio) => {
      const pa = vapourPa({ airC: Number(c), rhPct: 100 });
      const ours = (0.621945 * pa) / (101_325 - pa);
      expect(relative(ours, ratio)).toBeLessThan(0.01);
    },
  );
});

test('saturated air is at its dew point and takes up nothing; dry air has none', () => {
  for (const airC of [-30, -5, 0, 0.01, 5, 23, 60]) {
    expect(deficitPa({ airC, rhPct: 100 })).toBe(0);
    expect(marginK({ airC, rhPct: 100 })).toBeCloseTo(0, 2);
    expect(dewPointC({ airC, rhPct: 0 })).toBeNull();
    expect(dewPointC({ airC, rhPct: null })).toBeNull();
    expect(marginK({ airC, rhPct: null })).toBeNull();
  }
});
