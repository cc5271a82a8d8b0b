import { describe, expect, it } from 'vitest';
import { approximateC } from '../../shared/thermocouple/reference-functions.ts';
import {
  emfUv,
  hotJunctionC,
  referenceFunctions,
  temperatureC,
} from '../../shared/thermocouple/thermocouple.ts';
import { type ToleranceClass, toleranceK } from '../../shared/thermocouple/tolerance.ts';
import { type ThermocoupleType, thermocoupleTypes } from '../../shared/thermocouple/types.ts';
import { json, rows } from './data.ts';

/**
 * Thermocouples against what is published: NIST Monograph 175 (tables, coefficients; seen) and the tolerance
 * classes of ASTM E230 and IEC 60584-1 (seen as wire makers give them). Sources: data/1_thermocouple_its90.
 */

const FOLDER = '1_thermocouple_its90';

/** A printed emf, "-0.117" mV, in whole microvolt. */
const printedUv = (mv: string | undefined): number => Math.round(Number(mv) * 1000);

interface Printed {
  readonly tC: number;
  readonly uv: number;
}
const printedTable = (type: ThermocoupleType): readonly Printed[] =>
  rows(`${FOLDER}/table_type_${type.toLowerCase()}_full.csv`).map(([t, mv]) => ({
    tC: Number(t),
    uv: printedUv(mv),
  }));

/** For a value that the test itself knows to be in range. */
function known(value: number | null): number {
  if (value === null) throw new Error('out of range');
  return value;
}

/** Sensitivity in uV/K as the reference function itself gives it, over 2 mK that stay in its range. */
function sensitivity(type: ThermocoupleType, tC: number): number {
  const from = emfUv(type, tC - 0.001) === null ? tC : tC - 0.001;
  const to = emfUv(type, tC + 0.001) === null ? tC : tC + 0.001;
  return (known(emfUv(type, to)) - known(emfUv(type, from))) / (to - from);
}

/** The published inverse range: degC, and the printed emf of its ends in uV. */
function inverseRange(type: ThermocoupleType) {
  const { inverse } = referenceFunctions[type];
  const last = inverse[inverse.length - 1] ?? inverse[0];
  return {
    minC: inverse[0].tMinC,
    maxC: last.tMaxC,
    minUv: Math.round(inverse[0].emfMinMv * 1000),
    maxUv: Math.round(last.emfMaxMv * 1000),
  };
}

interface PublishedPiece {
  readonly t_min_c: number;
  readonly t_max_c: number;
  readonly emf_min_mv: number;
  readonly emf_max_mv: number;
  readonly error_min_c: number;
  readonly error_max_c: number;
  readonly coeffs: readonly string[];
}
interface Published {
  readonly forward: readonly PublishedPiece[];
  readonly forward_exponential: Readonly<Record<'a0' | 'a1' | 'a2', string>> | null;
  readonly inverse: readonly PublishedPiece[];
}
const published = json(`${FOLDER}/coefficients_its90.json`) as Readonly<Record<ThermocoupleType, Published>>;

const printedRows: Readonly<Record<ThermocoupleType, number>> = {
  K: 1643,
  J: 1411,
  T: 671,
  E: 1271,
  N: 1571,
};

describe.each(thermocoupleTypes)('type %s', (type) => {
  const table = printedTable(type);
  const range = inverseRange(type);

  it('has the whole printed table to be checked against', () => {
    const { forward } = referenceFunctions[type];
    expect(table).toHaveLength(printedRows[type]);
    expect(table[0]?.tC).toBe(forward[0].tMinC);
    expect(table.at(-1)?.tC).toBe(forward[1].tMaxC);
  });

  it('has the published coefficients and ranges', () => {
    const { forward, forward_exponential: exponential, inverse } = published[type];
    expect(referenceFunctions[type].forward).toEqual(
      forward.map((piece, i) => ({
        tMinC: piece.t_min_c,
        tMaxC: piece.t_max_c,
        coefficients: piece.coeffs.map(Number),
        exponential:
          exponential === null || i === 0
            ? null
            : { a0: Number(exponential.a0), a1: Number(exponential.a1), a2: Number(exponential.a2) },
      })),
    );
    expect(referenceFunctions[type].inverse).toEqual(
      inverse.map((piece) => ({
        tMinC: piece.t_min_c,
        tMaxC: piece.t_max_c,
        emfMinMv: piece.emf_min_mv,
        emfMaxMv: piece.emf_max_mv,
        coefficients: piece.coeffs.map(Number),
      })),
    );
  });

  it('gives every printed emf when rounded as printed', () => {
    const wrong = table.filter(({ tC, uv }) => Math.round(known(emfUv(type, tC))) !== uv);
    expect(wrong).toEqual([]);
  });

  it('gives every printed temperature back within half a printed digit over the sensitivity there', () => {
    const invertible = table.filter(({ tC }) => tC >= range.minC);
    expect(invertible).toHaveLength(range.maxC - range.minC + 1);
    const wrong = invertible.filter(({ tC, uv }) => {
      return Math.abs(known(temperatureC(type, uv)) - tC) > 0.5 / sensitivity(type, tC);
    });
    expect(wrong).toEqual([]);
  });

  it('refuses every printed emf that is plainly below the inverse range', () => {
    const below = table.filter(({ uv }) => uv < range.minUv);
    expect(below).toHaveLength(range.minC - (table[0]?.tC ?? 0));
    expect(below.filter(({ uv }) => temperatureC(type, uv) !== null)).toEqual([]);
  });

  it('inverts its own forward function within 0.001 degC, every 0.05 degC of the inverse range', () => {
    let worstK = 0;
    const steps = (range.maxC - range.minC) * 20;
    for (let i = 0; i <= steps; i += 1) {
      const tC = range.minC + i / 20;
      worstK = Math.max(worstK, Math.abs(known(temperatureC(type, known(emfUv(type, tC)))) - tC));
    }
    expect(worstK).toBeLessThan(0.001);
  });

  it('rises from each printed temperature to the next', () => {
    const falling = table.slice(1).filter(({ tC }) => known(emfUv(type, tC)) <= known(emfUv(type, tC - 1)));
    expect(falling).toEqual([]);
  });

  it('starts from inverse polynomials that keep within their published error bands', () => {
    // The bands are printed to 0.01 degC and hold for the function's own emf.
    for (const [i, piece] of referenceFunctions[type].inverse.entries()) {
      const band = published[type].inverse[i];
      if (band === undefined) throw new Error('a piece without a band');
      for (let tC = piece.tMinC; tC <= piece.tMaxC; tC += 1) {
        const errorK = approximateC(piece, known(emfUv(type, tC)) / 1000) - tC;
        expect(errorK).toBeGreaterThan(band.error_min_c - 0.005);
        expect(errorK).toBeLessThan(band.error_max_c + 0.005);
      }
    }
  });

  it('accepts half a printed digit beyond the printed ends, and not more', () => {
    expect(temperatureC(type, range.minUv - 0.5)).toBe(range.minC);
    expect(temperatureC(type, range.maxUv + 0.5)).toBe(range.maxC);
    expect(temperatureC(type, range.minUv - 0.5001)).toBeNull();
    expect(temperatureC(type, range.maxUv + 0.5001)).toBeNull();
  });

  it('compensates the cold junction: printed differences of emf give the hot junction', () => {
    const cold = table.filter(({ tC }) => tC >= -40 && tC <= 125 && tC % 5 === 0);
    const hot = table.filter(({ tC }) => tC >= -100 && tC <= 390 && tC % 10 === 0);
    expect(cold.length * hot.length).toBe(34 * 50);
    for (const { tC: coldC, uv: coldUv } of cold) {
      for (const { tC, uv } of hot) {
        // Both printed values are rounded: a whole digit between them.
        const allowedK = 1 / sensitivity(type, tC) + 0.001;
        expect(Math.abs(known(hotJunctionC(type, uv - coldUv, coldC)) - tC)).toBeLessThanOrEqual(allowedK);
      }
    }
  });
});

describe('the table of four types, -50 to 600 degC', () => {
  it('agrees with the forward functions at every printed value', () => {
    const types = ['K', 'J', 'T', 'E'] as const;
    let compared = 0;
    for (const [t, ...mv] of rows(`${FOLDER}/table_mv_KJTE_-50_600.csv`)) {
      for (const [i, type] of types.entries()) {
        if (mv[i] === '') continue;
        expect(Math.round(known(emfUv(type, Number(t))))).toBe(printedUv(mv[i]));
        compared += 1;
      }
    }
    expect(compared).toBe(3 * 651 + 451);
  });
});

describe('tolerance classes', () => {
  const classOf: Readonly<Record<string, ToleranceClass>> = {
    special: 'astm-special',
    standard: 'astm-standard',
    standard_below_0: 'astm-standard',
    class1: 'iec-1',
    class2: 'iec-2',
    class3: 'iec-3',
  };
  const classes = rows(`${FOLDER}/tolerance_classes.csv`).map(
    ([standard, type, name = '', from, to, leastK, share]) => ({
      standard,
      name,
      type: thermocoupleTypes.find((ours) => ours === type) ?? 'K',
      class: classOf[name] ?? 'iec-1',
      from: Number(from),
      to: Number(to),
      leastK: Number(leastK),
      share: Number(share),
    }),
  );

  it('has all 27 published rows', () => {
    expect(classes).toHaveLength(27);
    expect(new Set(classes.map((row) => `${row.type} ${row.name}`)).size).toBe(27);
  });

  it.each(classes)('$standard type $type $name is as published over its range', (row) => {
    for (let tC = row.from; tC <= row.to; tC += 1) {
      const expectedK = Math.max(row.leastK, row.share * Math.abs(tC));
      expect(toleranceK(row.type, row.class, tC)).toBeCloseTo(expectedK, 12);
    }
  });

  it('gives none where no row does', () => {
    for (const type of thermocoupleTypes) {
      for (const toleranceClass of new Set(Object.values(classOf))) {
        for (let tC = -270; tC <= 1400; tC += 1) {
          const covered = classes.some(
            (row) => row.type === type && row.class === toleranceClass && tC >= row.from && tC <= row.to,
          );
          expect(toleranceK(type, toleranceClass, tC) !== null).toBe(covered);
        }
      }
    }
  });
});
