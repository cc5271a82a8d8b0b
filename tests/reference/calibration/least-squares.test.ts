import { describe, expect, it, test } from 'vitest';
import {
  type Line,
  type LinePoint,
  leastSquares,
  lineU,
  type Scatter,
} from '../../../shared/calibration/least-squares.ts';
import { propagate } from '../../../shared/calibration/propagate.ts';
import { json, rows } from '../data.ts';

/** Straight lines against certified and printed values. Sources and standing: data/4_statistics/SOURCES.md. */

const FOLDER = '4_statistics';
const points = (file: string): readonly LinePoint[] =>
  rows(`${FOLDER}/${file}`)
    .map((row) => row.map(Number))
    .map(([x = Number.NaN, y = Number.NaN]) => ({ x, y }));

/** A line with the scatter that three points or more give it. */
function fitted(data: readonly LinePoint[], x0: number): Line & { readonly scatter: Scatter } {
  const line = leastSquares(data, x0);
  if (line === null || line.scatter === null) throw new Error('no line');
  return { ...line, scatter: line.scatter };
}

describe('NIST StRD, Norris: certified values', () => {
  const certified = json(`${FOLDER}/nist_strd_norris_certified.json`) as Readonly<Record<string, number>>;
  const norris = points('nist_strd_norris.csv');
  /**
   * Half of the fifteenth digit that is certified, and two of a double's own last places: where the sixteenth digit is a
   * five, as in b0 = -0.2623230737740294953 (exact), a double can't tell which way to round.
   */
  const allowed = (value: number): number =>
    0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 14) + 2 * Number.EPSILON * Math.abs(value);

  it('has all 36 observations', () => expect(norris).toHaveLength(36));

  // In tenths the data are whole numbers, which a double holds exactly; 0.1 itself it does not.
  const tenths = norris.map(({ x, y }) => ({ x: Math.round(x * 10), y: Math.round(y * 10) }));
  const line = fitted(tenths, 0);
  const { s, u1, u2, degreesOfFreedom } = line.scatter;

  it.each([
    ['b0', line.b1 / 10],
    ['b1', line.b2],
    ['b0_sd', u1 / 10],
    ['b1_sd', u2],
    ['residual_sd', s / 10],
    ['residual_ms', (s * s) / 100],
    ['residual_ss', (s * s * degreesOfFreedom) / 100],
  ])('%s to all certified digits', (name, value) => {
    const printed = certified[name] ?? Number.NaN;
    expect(Math.abs(value - printed)).toBeLessThanOrEqual(allowed(printed));
  });

  it('with as many degrees of freedom', () => expect(degreesOfFreedom).toBe(certified['dof_residual']));

  it('and from the decimals as they are typed, whose rounding in a double costs the last digits of b0', () => {
    const typed = fitted(norris, 0);
    const relative = (value: number, name: string): number => Math.abs(value / (certified[name] ?? 0) - 1);
    expect(relative(typed.b1, 'b0')).toBeLessThan(1e-11);
    expect(relative(typed.b2, 'b1')).toBeLessThan(1e-14);
    expect(relative(typed.scatter.s, 'residual_sd')).toBeLessThan(1e-12);
    expect(relative(typed.scatter.u1, 'b0_sd')).toBeLessThan(1e-12);
    expect(relative(typed.scatter.u2, 'b1_sd')).toBeLessThan(1e-12);
  });
});

describe('GUM H.3, calibration of a thermometer', () => {
  const {
    t0_c,
    printed,
    exact_recomputed: exact,
  } = json(`${FOLDER}/gum_h3_results.json`) as {
    readonly t0_c: number;
    readonly printed: Readonly<Record<string, number>>;
    readonly exact_recomputed: Readonly<Record<string, number>>;
  };
  const data = points('gum_h3_thermometer.csv');
  const line = fitted(data, t0_c);
  const { s, u1, u2, r, degreesOfFreedom } = line.scatter;
  const b30 = line.b1 + line.b2 * (30 - t0_c);
  const u30 = lineU(line.scatter, 30 - t0_c);

  it('has all 11 points', () => expect(data).toHaveLength(11));

  it.each([
    ['y1_c', line.b1, 4],
    ['u_y1_c', u1, 4],
    ['y2', line.b2, 5],
    ['u_y2', u2, 5],
    ['r', r, 2],
    ['s_c', s, 4],
    ['b_30c', b30, 4],
    ['u_b30_c', u30, 4],
  ])('%s to all printed digits', (name, value, decimals) => {
    expect(Number(value.toFixed(decimals))).toBe(printed[name]);
    expect(value / (exact[name] ?? 0)).toBeCloseTo(1, 3);
  });

  it('with as many degrees of freedom', () => expect(degreesOfFreedom).toBe(printed['dof']));

  it('whatever t0 the line is written about', () => {
    const about24 = fitted(data, 24);
    expect(about24.b1 + about24.b2 * 6).toBeCloseTo(b30, 12);
    expect(lineU(about24.scatter, 6)).toBeCloseTo(u30, 12);
  });
});

test('GUM H.3.6: a reference that is wrong for all points shifts the line and does not tilt it (figures of GTC)', () => {
  const expected = json(`${FOLDER}/gum_h3_systematic.json`) as Readonly<Record<string, string>>;
  const data = points('gum_h3_thermometer.csv');
  const line = fitted(data, 20);
  const errors = data.map(() => ({ own: line.scatter.s, shared: 0.005, source: 'the reference' }));
  const { u1, u2 } = propagate(data, 20, errors);
  expect(line.b1).toBeCloseTo(Number(expected['intercept']), 13);
  expect(line.b2).toBeCloseTo(Number(expected['slope']), 14);
  expect(u1).toBeCloseTo(Number(expected['u_intercept']), 13);
  expect(u2).toBeCloseTo(Number(expected['u_slope']), 14);
  const { s, degreesOfFreedom } = line.scatter;
  expect(s * s * degreesOfFreedom).toBeCloseTo(Number(expected['sum_of_squared_residuals']), 14);
});
