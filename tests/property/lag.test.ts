import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type KnownProbe,
  type LagFilter,
  plateEstimate,
  trackPlate,
} from '../../shared/thermometer/lag/filter.ts';
import { heardInStep, startStep, stopStep } from '../../shared/thermometer/lag/step-watch.ts';
import { timeConstantOf } from '../../shared/thermometer/lag/time-constant.ts';
import { recordStep } from '../unit/thermometer/lag/steps.ts';
import { drawer } from '../unit/watch/support/worked-iron.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const probes: fc.Arbitrary<KnownProbe> = fc.record({
  noiseK: fc.option(between(0, 2)),
  resolutionK: fc.option(between(0.001, 2)),
  lag: fc.option(fc.record({ tauS: between(0.01, 30), standardS: between(0, 3) })),
});

describe('the filter, whatever comes in', () => {
  // Readings come without a negative zero.
  const readings = fc.array(
    fc.record({ waitMs: fc.integer({ min: -300, max: 20_000 }), c: between(-270, 1300).map((c) => c + 0) }),
    {
      minLength: 1,
      maxLength: 80,
    },
  );

  test('stays finite, keeps covariances that can be ones, survives JSON', () => {
    fc.assert(
      fc.property(probes, readings, (probe, readings) => {
        let filter: LagFilter | null = null;
        let atMs = 1_000_000;
        for (const { waitMs, c } of readings) {
          atMs += waitMs;
          filter = trackPlate(filter, atMs, c, probe);
          const { jj, jp, js, pp, ps, ss } = filter;
          for (const variance of [jj, pp, ss]) expect(variance).toBeGreaterThan(-1e-9);
          for (const [ab, a, b] of [
            [jp, jj, pp],
            [js, jj, ss],
            [ps, pp, ss],
          ] as const)
            expect(ab * ab).toBeLessThanOrEqual(a * b * (1 + 1e-6) + 1e-9);
          for (const value of Object.values(plateEstimate(filter, probe)))
            expect(value).toSatisfy(Number.isFinite);
          expect(JSON.parse(JSON.stringify(filter))).toEqual(filter);
        }
      }),
    );
  });

  test('with a plate that is shifted by some kelvins, finds all shifted by as many', () => {
    fc.assert(
      fc.property(readings, between(-100, 100), (readings, byK) => {
        // Known noise: what is learned of it could differ by the last digit.
        const probe: KnownProbe = { noiseK: 0.2, resolutionK: 0.1, lag: { tauS: 2, standardS: 0.1 } };
        let [here, there]: (LagFilter | null)[] = [null, null];
        let atMs = 0;
        for (const { waitMs, c } of readings) {
          atMs += waitMs;
          here = trackPlate(here ?? null, atMs, c, probe);
          there = trackPlate(there ?? null, atMs, c + byK, probe);
          expect(there.plateC - here.plateC).toBeCloseTo(byK, 5);
          expect(there.slopeKPerS).toBeCloseTo(here.slopeKPerS, 5);
        }
      }),
    );
  });
});

describe('the time constant of a simulated step', () => {
  const periodsMs = [100, 100, 200, 250, 500];
  const resolutionsK = [0.01, 0.0625, 0.1, 0.25, 0.5, 1];

  test('is found with next to no bias, and its uncertainty holds', () => {
    let [found, inOne, inTwo, bias] = [0, 0, 0, 0];
    const count = 240;
    for (let seed = 1; seed <= count; seed++) {
      const draw = drawer(seed * 9973);
      const tauS = draw(0.8, 6);
      const swingK = draw(0, 5);
      const phase = draw(0, 6.28);
      const result = timeConstantOf(
        recordStep({
          tauS,
          startC: draw(15, 28),
          endC: draw(95, 190),
          onsetS: draw(4, 6),
          lastsS: 6 + tauS * draw(6, 20),
          periodMs: periodsMs[seed % periodsMs.length] ?? 100,
          noiseK: draw(0.02, 0.4),
          resolutionK: resolutionsK[seed % resolutionsK.length] ?? 0.1,
          endMovesK: (s) => swingK * (Math.sin(s / 13 + phase) - Math.sin(phase)),
          seed,
        }),
      );
      if (result.kind !== 'found') continue;
      const off = result.found.tauS - tauS;
      found++;
      bias += off / tauS;
      if (Math.abs(off) <= result.found.standardS) inOne++;
      if (Math.abs(off) <= 2 * result.found.standardS) inTwo++;
    }
    expect(found).toBeGreaterThan(0.9 * count);
    expect(Math.abs(bias / found)).toBeLessThan(0.005);
    // A normal spread has 68 % and 95 %.
    expect(inOne / found).toBeGreaterThan(0.6);
    expect(inTwo / found).toBeGreaterThan(0.9);
  });

  test('is found or refused for any record, never an error and never no number', () => {
    const records = fc.array(fc.record({ tMs: fc.integer({ max: 60_000 }), tC: fc.double() }), {
      maxLength: 60,
    });
    const steps = fc.array(
      fc.record({ tMs: between(0, 20_000), tC: fc.constantFrom(20, 20.25, 90, 149, 150) }),
      {
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(fc.oneof(records, steps), (record) => {
        const result = timeConstantOf(record);
        if (result.kind === 'refused') return;
        expect(result.found.tauS).toBeGreaterThan(0);
        for (const value of Object.values(result.found)) expect(value).toSatisfy(Number.isFinite);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a step that is waited for', () => {
  const heard = fc.record({
    waitMs: fc.integer({ min: 0, max: 4000 }),
    deviceMs: fc.option(fc.integer({ min: 0, max: 2 ** 32 - 1 })),
    readC: fc.oneof(between(15, 25), between(0, 200), fc.constant(Number.NaN)),
  });

  test('is found or refused whatever comes in, and survives JSON', () => {
    fc.assert(
      fc.property(fc.array(heard, { maxLength: 80 }), (all) => {
        let watch = startStep('clip', 0);
        let tMs = 0;
        for (const { waitMs, ...one } of all) {
          tMs += waitMs;
          watch = heardInStep(watch, { ...one, tMs });
          expect(JSON.parse(JSON.stringify(watch))).toEqual(watch);
        }
        const { end } = stopStep(watch);
        if (end?.kind === 'found') expect(end.found.tauS).toBeGreaterThan(0);
        else expect(end?.kind).toBe('refused');
      }),
      { numRuns: 60 },
    );
  });

  test('from rest, is found by itself with a time constant that holds within its uncertainty', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const draw = drawer(seed * 7919);
      const tauS = draw(0.8, 5);
      let watch = startStep('clip', 0);
      const record = recordStep({
        tauS,
        startC: draw(15, 28),
        endC: seed % 3 === 0 ? 0 : draw(95, 190),
        onsetS: draw(24, 30),
        lastsS: 32 + 8 * tauS,
        periodMs: 100,
        noiseK: draw(0.02, 0.15),
        resolutionK: 0.25,
        seed,
      });
      for (const { tMs, tC } of record) watch = heardInStep(watch, { tMs, deviceMs: null, readC: tC });
      const { end } = watch;
      if (end?.kind !== 'found') return expect.unreachable(`seed ${seed}: ${JSON.stringify(end)}`);
      expect(Math.abs(end.found.tauS - tauS)).toBeLessThan(4 * end.found.standardS);
    }
  });
});
