import { describe, expect, it } from 'vitest';
import { emfAndSlope } from '../../../shared/thermocouple/reference-functions.ts';
import {
  emfUv,
  hotJunctionC,
  referenceFunctions,
  temperatureC,
} from '../../../shared/thermocouple/thermocouple.ts';
import { thermocoupleTypes } from '../../../shared/thermocouple/types.ts';

describe('emfUv', () => {
  it('is nothing at 0 degC, by definition', () => {
    for (const type of thermocoupleTypes) expect(emfUv(type, 0)).toBe(0);
  });

  it.each([
    ['K', -270, 1372],
    ['J', -210, 1200],
    ['T', -270, 400],
    ['E', -270, 1000],
    ['N', -270, 1300],
  ] as const)('of type %s reaches from %d to %d degC, ends included', (type, minC, maxC) => {
    expect(emfUv(type, minC)).not.toBeNull();
    expect(emfUv(type, maxC)).not.toBeNull();
    expect(emfUv(type, minC - 1e-9)).toBeNull();
    expect(emfUv(type, maxC + 1e-9)).toBeNull();
  });

  it.each([NaN, Infinity, -Infinity])('has no emf for %d', (tC) => {
    expect(emfUv('K', tC)).toBeNull();
  });
});

describe('emfAndSlope', () => {
  it('has the slope of its own function', () => {
    for (const type of thermocoupleTypes) {
      for (const tC of [-195, -50.5, 21.5, 127, 180, 399]) {
        const functions = referenceFunctions[type];
        const rise = emfAndSlope(functions, tC + 0.01).emfMv - emfAndSlope(functions, tC - 0.01).emfMv;
        expect(emfAndSlope(functions, tC).slopeMvPerK).toBeCloseTo(rise / 0.02, 9);
      }
    }
  });
});

describe('temperatureC', () => {
  it('is 0 degC for no emf', () => {
    for (const type of thermocoupleTypes) expect(temperatureC(type, 0)).toBeCloseTo(0, 6);
  });

  it('gives the end of the range for an emf between the end and half a printed digit beyond it', () => {
    expect(temperatureC('K', 54_886.5)).toBe(1372);
    expect(temperatureC('J', -8095.5)).toBe(-210);
  });

  it('refuses an emf further out', () => {
    expect(temperatureC('K', 54_886.6)).toBeNull();
    expect(temperatureC('J', -8095.6)).toBeNull();
  });

  it.each([NaN, Infinity, -Infinity])('refuses %d', (uv) => {
    expect(temperatureC('K', uv)).toBeNull();
  });
});

describe('hotJunctionC', () => {
  it('is the cold junction when there is no emf: a shorted pair reads its terminals', () => {
    expect(hotJunctionC('K', 0, 23.4)).toBeCloseTo(23.4, 6);
  });

  it('adds emfs, not temperatures', () => {
    // Type T, NIST table: 992 uV at 25 degC, 14862 uV at 300 degC.
    const terminalUv = 14_862 - 992;
    expect(hotJunctionC('T', terminalUv, 25)).toBeCloseTo(300, 1);
    expect((temperatureC('T', terminalUv) ?? 0) + 25).toBeGreaterThan(305);
  });

  it.each([-40, 125])('takes a cold junction at %d degC', (coldC) => {
    expect(hotJunctionC('K', 4000, coldC)).not.toBeNull();
  });

  it.each([-40.1, 125.1, NaN, Infinity])('refuses a cold junction at %d degC', (coldC) => {
    expect(hotJunctionC('K', 4000, coldC)).toBeNull();
  });

  it('refuses an emf that the cold junction takes out of range', () => {
    expect(temperatureC('K', 54_000)).not.toBeNull();
    expect(hotJunctionC('K', 54_000, 60)).toBeNull();
    expect(hotJunctionC('K', NaN, 20)).toBeNull();
  });
});
