import { describe, expect, it, test } from 'vitest';
import { standardPressureHpa } from '../../../shared/calibration/atmosphere.ts';
import { boilingPointC, saturationPressureHpa } from '../../../shared/calibration/boiling.ts';
import { referenceOf } from '../../../shared/calibration/points.ts';
import { isRefusal } from '../../../shared/calibration/refusals.ts';
import { json, rows } from '../data.ts';

/** Boiling water and the air above it. Sources and standing: data/2_water_air/SOURCES.md. */

/** For a value that the test itself knows to be in range. */
function known(value: number | null): number {
  if (value === null) throw new Error('out of range');
  return value;
}

/** Half of the last digit that a figure was printed with. */
const halfDigit = (printed: string): number => 0.5 * 10 ** -(printed.split('.')[1]?.length ?? 0);

interface Region4 {
  readonly table35_psat: readonly { readonly T_K: number; readonly p_MPa: number }[];
  readonly table36_tsat: readonly { readonly T_K: number; readonly p_MPa: number }[];
}
const region4 = json('2_water_air/iapws_if97_region4.json') as Region4;

describe('IAPWS R7-97(2012), region 4 (seen)', () => {
  it.each(region4.table35_psat)('table 35: at $T_K K saturation is at $p_MPa MPa, all nine digits', (row) => {
    const mPa = known(saturationPressureHpa(row.T_K - 273.15)) / 1e4;
    expect(Number(mPa.toPrecision(9))).toBe(row.p_MPa);
  });

  it.each(region4.table36_tsat)(
    'table 36: under $p_MPa MPa water boils at $T_K K, all nine digits',
    (row) => {
      const tK = known(boilingPointC(row.p_MPa * 1e4)) + 273.15;
      expect(Number(tK.toPrecision(9))).toBe(row.T_K);
    },
  );
});

describe('saturation pressure every 5 K from 0.01 to 100 degC', () => {
  const table = rows('2_water_air/saturation_0_100C.csv');
  it('has all 21 rows', () => expect(table).toHaveLength(21));

  it.each(table)('%s degC', (t, textbookKpa = '', ohioMpa = '', ashraePa = '', if97Kpa = '') => {
    const hPa = known(saturationPressureHpa(Number(t)));
    // Computed by the same formulation: to its printed digits.
    expect((hPa / 10).toFixed(5)).toBe(if97Kpa);
    // Steam table of Ohio University (seen): within a printed digit, since some of its rows are cut, not rounded.
    if (ohioMpa !== '') expect(Math.abs(hPa / 1e4 - Number(ohioMpa))).toBeLessThan(1e-5);
    // Other formulations: ASHRAE 2017 ch. 1 table 3 (seen), Cengel and Boles table A-4 (recalled).
    if (ashraePa !== '') expect(Math.abs((hPa * 100) / Number(ashraePa) - 1)).toBeLessThan(3e-4);
    expect(Math.abs(hPa / 10 / Number(textbookKpa) - 1)).toBeLessThan(4e-4);
    expect(known(boilingPointC(hPa))).toBeCloseTo(Number(t), 6);
  });
});

describe('ISO 2533 standard atmosphere (seen)', () => {
  const table = rows('2_water_air/isa_pressure_0_4000m.csv');
  it('has all 41 rows', () => expect(table).toHaveLength(41));

  it.each(table)('at %s m the pressure is %s Pa, all six digits', (m, pa) => {
    const pascal = known(standardPressureHpa(Number(m))) * 100;
    expect(Number(pascal.toPrecision(6))).toBe(Number(pa));
  });
});

describe('boiling point by altitude: IF97 at the ISO 2533 pressure (computed)', () => {
  const table = rows('2_water_air/boiling_point_vs_altitude.csv');
  it('has all 9 rows', () => expect(table).toHaveLength(9));

  it.each(table)('at %s m (%s Pa) water boils at %s degC', (m, pa = '', c = '') => {
    const hPa = known(standardPressureHpa(Number(m)));
    expect(Math.abs(hPa * 100 - Number(pa))).toBeLessThanOrEqual(halfDigit(pa));
    expect(known(boilingPointC(hPa)).toFixed(2)).toBe(c);
    const point = referenceOf({ kind: 'boiling', pressureHpa: null, altitudeM: Number(m) });
    if (isRefusal(point)) throw new Error(point.reason);
    expect(point.referenceC.toFixed(2)).toBe(c);
  });
});

test('printed rules of thumb for 1000 to 4000 m agree within 0.3 K (common practice)', () => {
  const loose = [96.5, 93.1, 89.8, 86.5];
  for (const [i, c] of loose.entries())
    expect(Math.abs(known(boilingPointC(known(standardPressureHpa((i + 1) * 1000)))) - c)).toBeLessThan(0.3);
});
