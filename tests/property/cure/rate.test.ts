import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deficitPa, dewPointC, saturationPa, vapourPa } from '../../../shared/cure/humid-air.ts';
import { dryingPace, dryingRate } from '../../../shared/cure/rate.ts';
import { airs, between, cements } from './arbitraries.ts';

const numRuns = 2000;

describe('humid air', () => {
  it('holds more water the warmer it is, and its dew point is what that water was saturated at', () => {
    fc.assert(
      fc.property(between(-30, 60), between(0.001, 20), between(0.1, 100), (airC, warmerK, rhPct) => {
        expect(saturationPa(airC + warmerK)).toBeGreaterThan(saturationPa(airC));
        expect(vapourPa({ airC, rhPct }) + deficitPa({ airC, rhPct })).toBeCloseTo(saturationPa(airC), 6);
        const dewC = dewPointC({ airC, rhPct }) ?? Number.NaN;
        expect(dewC).toBeLessThanOrEqual(airC);
        expect(Math.abs(saturationPa(dewC) / vapourPa({ airC, rhPct }) - 1)).toBeLessThan(2e-3);
      }),
      { numRuns },
    );
  });
});

describe('how fast cement dries', () => {
  it('is 1 exactly in the instructions’ own air', () => {
    fc.assert(
      fc.property(cements(), fc.boolean(), (cement, told) => {
        expect(dryingRate(cement, { airC: cement.atC, rhPct: told ? cement.atRhPct : null })).toBe(1);
      }),
      { numRuns },
    );
  });

  it('is a number, never below 0, and the likely rate lies between the others, whatever the air', () => {
    fc.assert(
      fc.property(cements(), fc.option(airs), between(0, 6), between(0, 20), (cement, air, airK, rhPct) => {
        const { least, likely, most } = dryingPace(cement, air, { airK, rhPct });
        expect(Number.isFinite(most)).toBe(true);
        expect(least).toBeGreaterThanOrEqual(0);
        expect(least).toBeLessThanOrEqual(likely);
        expect(likely).toBeLessThanOrEqual(most);
      }),
      { numRuns },
    );
  });

  it('widens with what is not known', () => {
    fc.assert(
      fc.property(cements(), airs, between(0, 5), between(0, 15), (cement, air, airK, rhPct) => {
        const [narrow, wide] = [
          dryingPace(cement, air, { airK, rhPct }),
          dryingPace(cement, air, { airK: airK + 1, rhPct: rhPct + 5 }),
        ];
        expect(wide.least).toBeLessThanOrEqual(narrow.least);
        expect(wide.most).toBeGreaterThanOrEqual(narrow.most);
      }),
      { numRuns },
    );
  });

  it('water: never in saturated air; no slower where the same air is heated, or is drier', () => {
    fc.assert(
      fc.property(cements(['water-borne']), airs, between(0, 20), (cement, { airC, rhPct }, heatedK) => {
        expect(dryingRate(cement, { airC, rhPct: 100 })).toBe(0);
        if (rhPct === null) return;
        const rate = dryingRate(cement, { airC, rhPct });
        const heated = airC + heatedK;
        const heatedPct = (vapourPa({ airC, rhPct }) / saturationPa(heated)) * 100;
        expect(dryingRate(cement, { airC: heated, rhPct: heatedPct })).toBeGreaterThanOrEqual(
          rate - 1e-12 * dryingRate(cement, { airC, rhPct: 0 }),
        );
        expect(dryingRate(cement, { airC, rhPct: rhPct * 0.9 })).toBeGreaterThanOrEqual(rate);
      }),
      { numRuns },
    );
  });

  it('all others: no slower where it is warmer; moisture-curing no slower where it is more humid', () => {
    const kinds = ['solvent-borne', 'two-part', 'moisture-curing'] as const;
    fc.assert(
      fc.property(cements(kinds), airs, between(0, 20), (cement, air, warmerK) => {
        expect(dryingRate(cement, { ...air, airC: air.airC + warmerK })).toBeGreaterThanOrEqual(
          dryingRate(cement, air),
        );
        if (cement.kind === 'moisture-curing' && air.rhPct !== null) {
          const moister = air.rhPct + (100 - air.rhPct) / 2;
          expect(dryingRate(cement, { ...air, rhPct: moister })).toBeGreaterThanOrEqual(
            dryingRate(cement, air),
          );
          expect(dryingRate(cement, { ...air, rhPct: 0 })).toBe(0);
        }
      }),
      { numRuns },
    );
  });
});
