import { expect, test } from 'vitest';
import { airConcerns } from '../../../shared/cure/concerns.ts';
import type { AirConcernKind } from '../../../shared/cure/conditions.ts';
import { marginK } from '../../../shared/cure/humid-air.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import { record } from '../data.ts';

/** In what air coatings are put on. Sources and standing: data/3_drying_cure/SOURCES.md. */

const FILE = '3_drying_cure/paint_and_adhesive_conditions.json';

const kinds = (airC: number, rhPct: number | null): readonly AirConcernKind[] =>
  airConcerns(null, { airC, rhPct }).map(({ kind }) => kind);

test('MIL-HDBK-1110 7.4 (seen): between 45 and 90 degF', () => {
  const { facts } = record(FILE, 'mil-hdbk-1110-7.4') as {
    facts: { apply_between_f: [number, number]; apply_between_c: [number, number] };
  };
  const [lowC, highC] = facts.apply_between_f.map(fToC);
  if (lowC === undefined || highC === undefined) return expect.unreachable();
  expect([lowC, highC].map((c) => Number(c.toFixed(1)))).toEqual(facts.apply_between_c);
  expect(kinds(lowC, 50)).toEqual([]);
  expect(kinds(highC, 50)).toEqual([]);
  expect(airConcerns(null, { airC: lowC - 0.1, rhPct: 50 })).toEqual([
    { kind: 'too-cold', by: 'practice', limit: lowC },
  ]);
  expect(airConcerns(null, { airC: highC + 0.1, rhPct: 50 })).toEqual([
    { kind: 'too-hot', by: 'practice', limit: highC },
  ]);
});

test('marine painting guide (seen): 85 % at most, and 3 K over the dew point at least', () => {
  const { facts } = record(FILE, 'dew-point-margin') as {
    facts: { min_surface_above_dew_point_c: number; max_rh: number };
  };
  const highestPct = facts.max_rh * 100;
  expect(airConcerns(null, { airC: 20, rhPct: highestPct + 0.1 })).toContainEqual({
    kind: 'too-humid',
    by: 'practice',
    limit: highestPct,
  });
  expect(kinds(20, highestPct)).not.toContain('too-humid');
  // 83.0 % at 20 degC is 3 K over the dew point: the one is said from there on, the other not yet.
  for (let rhPct = 80; rhPct < 90; rhPct += 0.1) {
    const margin = marginK({ airC: 20, rhPct }) ?? Number.NaN;
    expect(kinds(20, rhPct).includes('near-dew-point')).toBe(margin < facts.min_surface_above_dew_point_c);
  }
  expect(kinds(20, 82)).toEqual([]);
  expect(kinds(20, 84)).toEqual(['near-dew-point']);
});

test('the laboratory’s own air (paint trade note, seen) is as it should be', () => {
  const { facts } = record(FILE, 'dry-time-reference-condition') as {
    facts: { temperature_c: number; rh: number };
  };
  expect(kinds(facts.temperature_c, facts.rh * 100)).toEqual([]);
});
