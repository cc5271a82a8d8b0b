import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  COLD_JUNCTION_RANGE_C,
  emfUv,
  hotJunctionC,
  referenceFunctions,
  temperatureC,
} from '../../shared/thermocouple/thermocouple.ts';
import { thermocoupleTypes } from '../../shared/thermocouple/types.ts';

const numRuns = 5000;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** For a value that the property itself keeps in range. */
function known(value: number | null): number {
  if (value === null) throw new Error('out of range');
  return value;
}

describe.each(thermocoupleTypes)('type %s', (type) => {
  const { forward, inverse } = referenceFunctions[type];
  const minC = inverse[0].tMinC;
  const maxC = forward[1].tMaxC;

  it('comes back from any temperature of the inverse range within 0.001 degC', () => {
    fc.assert(
      fc.property(between(minC, maxC), (tC) => {
        expect(Math.abs(known(temperatureC(type, known(emfUv(type, tC)))) - tC)).toBeLessThan(0.001);
      }),
      { numRuns },
    );
  });

  it('comes back from temperatures close to where two pieces meet', () => {
    const joins = [forward[0].tMaxC, ...inverse.slice(1).map((piece) => piece.tMinC)];
    fc.assert(
      fc.property(fc.constantFrom(...joins), between(-1e-3, 1e-3), (joinC, offK) => {
        const tC = joinC + offK;
        expect(Math.abs(known(temperatureC(type, known(emfUv(type, tC)))) - tC)).toBeLessThan(1e-6);
      }),
      { numRuns },
    );
  });

  it('has an emf that rises with temperature over the whole published range', () => {
    fc.assert(
      fc.property(between(forward[0].tMinC, maxC - 0.01), between(0.01, 100), (tC, stepK) => {
        const higherC = Math.min(tC + stepK, maxC);
        expect(known(emfUv(type, higherC))).toBeGreaterThan(known(emfUv(type, tC)));
      }),
      { numRuns },
    );
  });

  it('has a temperature that never falls as the emf rises', () => {
    const from = known(emfUv(type, minC));
    const to = known(emfUv(type, maxC));
    fc.assert(
      fc.property(between(from, to), between(from, to), (a, b) => {
        const [low, high] = a <= b ? [a, b] : [b, a];
        expect(known(temperatureC(type, high))).toBeGreaterThanOrEqual(known(temperatureC(type, low)) - 1e-9);
      }),
      { numRuns },
    );
  });

  it('finds the hot junction whatever the cold junction is', () => {
    const { min, max } = COLD_JUNCTION_RANGE_C;
    fc.assert(
      fc.property(between(minC, maxC), between(min, max), (tC, coldC) => {
        const terminalUv = known(emfUv(type, tC)) - known(emfUv(type, coldC));
        expect(Math.abs(known(hotJunctionC(type, terminalUv, coldC)) - tC)).toBeLessThan(0.001);
      }),
      { numRuns },
    );
  });

  it('makes of any two numbers a temperature inside the published range, or null', () => {
    const anything = fc.oneof(fc.double(), between(-1e5, 1e5), fc.constantFrom(NaN, Infinity, -Infinity));
    fc.assert(
      fc.property(anything, anything, (terminalUv, coldC) => {
        for (const tC of [temperatureC(type, terminalUv), hotJunctionC(type, terminalUv, coldC)]) {
          if (tC !== null) expect(tC >= minC && tC <= maxC).toBe(true);
        }
      }),
      { numRuns },
    );
  });
});
