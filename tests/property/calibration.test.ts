import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressureHpa } from '../../shared/calibration/atmosphere.ts';
import { boilingPointC, saturationPressureHpa } from '../../shared/calibration/boiling.ts';
import type { CalibrationPoint } from '../../shared/calibration/calibration.ts';
import {
  type Correction,
  corrected,
  correctionSchema,
  correctionUK,
} from '../../shared/calibration/correction.ts';
import { fitCorrection } from '../../shared/calibration/fit.ts';
import { leastSquares } from '../../shared/calibration/least-squares.ts';
import { isRefusal } from '../../shared/calibration/refusals.ts';
import { addReading, startWaiting, waitingOf } from '../../shared/calibration/steadiness.ts';
import { toleranceClasses } from '../../shared/thermocouple/tolerance.ts';
import { thermocoupleTypes } from '../../shared/thermocouple/types.ts';
import { budget, confidences } from '../../shared/thermometer/uncertainty.ts';
import { contactPoint, fittedProbe } from '../unit/calibration/points.ts';

const numRuns = 2000;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Contact points some 40 K apart and up to 10 K off, in any order: always a sound set. */
const soundPoints = (least: number, most: number): fc.Arbitrary<CalibrationPoint[]> =>
  fc
    .array(
      fc.record({
        aboveK: between(0, 5),
        offK: between(-3, 3),
        referenceUK: between(0.01, 3),
        readingSpreadK: between(0, 1),
        resolutionK: fc.option(between(0.01, 1)),
        instrument: fc.constantFrom('one', 'another'),
      }),
      { minLength: least, maxLength: most },
    )
    .map((all) =>
      all.map(({ aboveK, offK, ...rest }, i) => {
        const referenceC = 50 + 45 * i + aboveK;
        return contactPoint(referenceC - offK, referenceC, rest);
      }),
    )
    .chain((points) => fc.shuffledSubarray(points, { minLength: points.length }));

function sound(points: readonly CalibrationPoint[]): Correction {
  const correction = fitCorrection(points, fittedProbe);
  if (isRefusal(correction)) throw new Error(correction.reason);
  return correction;
}

describe('a correction', () => {
  it('makes one point or two exact, and is there as uncertain as the point', () => {
    fc.assert(
      fc.property(soundPoints(1, 2), (points) => {
        const correction = sound(points);
        for (const p of points) {
          expect(corrected(p.readingC, correction)).toBeCloseTo(p.referenceC, 9);
          const ownK = Math.hypot(p.referenceUK, p.readingSpreadK, (p.resolutionK ?? 0) / Math.sqrt(12));
          expect(correctionUK(correction, p.readingC)).toBeCloseTo(ownK, 6);
        }
      }),
      { numRuns },
    );
  });

  it('is the same in whatever order the points come', () => {
    const twice = soundPoints(1, 6).chain((points) =>
      fc.tuple(fc.constant(points), fc.shuffledSubarray(points, { minLength: points.length })),
    );
    fc.assert(
      fc.property(twice, ([a, b]) => {
        expect(sound(a)).toEqual(sound(b));
      }),
      { numRuns },
    );
  });

  it('keeps a hotter plate hotter', () => {
    fc.assert(
      fc.property(soundPoints(1, 6), between(-50, 400), between(0.01, 100), (points, readingC, moreK) => {
        const correction = sound(points);
        expect(corrected(readingC + moreK, correction)).toBeGreaterThan(corrected(readingC, correction));
      }),
      { numRuns },
    );
  });

  it('has an uncertainty that is never nothing, and grows beyond the points', () => {
    fc.assert(
      fc.property(soundPoints(1, 6), between(0, 200), between(1, 100), (points, outK, moreK) => {
        const correction = sound(points);
        for (const [end, way] of [
          [correction.toC, 1],
          [correction.fromC, -1],
        ] as const) {
          const nearK = correctionUK(correction, end + way * outK);
          expect(nearK).toBeGreaterThan(0);
          // Seen from the middle it always grows; an end next to a bad point may first come closer to a good one.
          if (correction.method === 'offset')
            expect(correctionUK(correction, end + way * (outK + moreK))).toBeGreaterThan(nearK);
        }
        expect(correctionUK(correction, correction.toC + 5000)).toBeGreaterThan(20);
      }),
      { numRuns },
    );
  });

  it('survives JSON, and its own schema', () => {
    fc.assert(
      fc.property(soundPoints(1, 6), (points) => {
        const correction = sound(points);
        expect(JSON.parse(JSON.stringify(correction))).toEqual(correction);
        expect(correctionSchema.parse(correction)).toEqual(correction);
      }),
      { numRuns },
    );
  });

  it('or a named refusal is what any numbers give: never a wrong number, never a crash', () => {
    const wild = fc.oneof(fc.double(), between(-300, 2000), fc.constantFrom(NaN, Infinity, 0));
    const anyPoint = fc.record({
      kind: fc.constantFrom('ice', 'boiling', 'contact'),
      readingC: wild,
      readingSpreadK: wild,
      readings: fc.integer({ min: 0, max: 100 }),
      resolutionK: fc.option(wild),
      referenceC: wild,
      referenceUK: wild,
      pressureHpa: fc.option(wild),
      altitudeM: fc.option(wild),
      instrument: fc.string(),
      takenAt: fc.constant('2026-03-01T10:00:00Z'),
    }) satisfies fc.Arbitrary<CalibrationPoint>;
    const mounting = fc.constantFrom('loose' as const, 'fitted' as const);
    fc.assert(
      fc.property(fc.array(anyPoint, { maxLength: 4 }), mounting, (points, how) => {
        const answer = fitCorrection(points, { mounting: how, thermocouple: 'K' });
        if (isRefusal(answer)) return;
        expect(Object.values(answer).filter((v) => typeof v === 'number' && !Number.isFinite(v))).toEqual([]);
        expect(Math.abs(corrected(100, answer) - 100)).toBeLessThan(500);
      }),
      { numRuns },
    );
  });
});

it('a least-squares line leaves less than any line near it', () => {
  const xy = fc.array(fc.record({ x: between(0, 300), y: between(-10, 10) }), {
    minLength: 3,
    maxLength: 12,
  });
  fc.assert(
    fc.property(xy, between(-0.5, 0.5), between(-0.01, 0.01), (points, shift, tilt) => {
      const line = leastSquares(points, 150);
      fc.pre(line !== null && Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x)) > 1);
      if (line === null) return;
      const left = (b1: number, b2: number): number =>
        points.reduce((sum, p) => sum + (p.y - b1 - b2 * (p.x - 150)) ** 2, 0);
      expect(left(line.b1, line.b2)).toBeLessThanOrEqual(left(line.b1 + shift, line.b2 + tilt) + 1e-9);
    }),
    { numRuns },
  );
});

describe('boiling water', () => {
  it('comes back from any temperature, and boils hotter under more pressure', () => {
    fc.assert(
      fc.property(between(0, 373.9), (tC) => {
        const hPa = saturationPressureHpa(tC) ?? Number.NaN;
        expect(boilingPointC(hPa)).toBeCloseTo(tC, 6);
        expect(saturationPressureHpa(tC + 0.01)).toBeGreaterThan(hPa);
      }),
      { numRuns },
    );
  });

  it('boils colder the higher one stands', () => {
    fc.assert(
      fc.property(between(-2000, 10_900), (m) => {
        const here = boilingPointC(standardPressureHpa(m) ?? Number.NaN);
        expect(boilingPointC(standardPressureHpa(m + 10) ?? Number.NaN)).toBeLessThan(here ?? Number.NaN);
      }),
      { numRuns },
    );
  });

  it('of anything else nothing is said', () => {
    fc.assert(
      fc.property(fc.double(), (x) => {
        for (const value of [boilingPointC(x), saturationPressureHpa(x), standardPressureHpa(x)])
          expect(value === null || Number.isFinite(value)).toBe(true);
      }),
      { numRuns },
    );
  });
});

it('a budget is the root sum of squares of parts that are never negative, and survives JSON', () => {
  const facts = fc.record({
    readingC: between(-200, 500),
    thermocouple: fc.constantFrom(...thermocoupleTypes),
    toleranceClass: fc.constantFrom(...toleranceClasses),
    calibration: fc.option(fc.record({ correction: soundPoints(1, 4).map(sound), inPlace: fc.boolean() })),
    resolutionK: fc.option(between(0, 5)),
    mountingK: fc.option(between(0, 20)),
    lagUK: between(0, 30),
    unevenness: fc.option(fc.record({ overK: between(0, 40), uK: between(0, 20) })),
    confidence: fc.constantFrom(...confidences),
  });
  fc.assert(
    fc.property(facts, (of) => {
      const { parts, uK, guardBandK, ...rest } = budget(of);
      for (const part of parts) expect(part.uK).toBeGreaterThanOrEqual(0);
      expect(uK ** 2).toBeCloseTo(
        parts.reduce((sum, part) => sum + part.uK ** 2, 0),
        6,
      );
      expect(guardBandK).toBeGreaterThan(0.84 * uK + (of.unevenness?.overK ?? 0));
      expect(JSON.parse(JSON.stringify({ parts, uK, guardBandK, ...rest }))).toEqual(budget(of));
    }),
    { numRuns },
  );
});

it('waiting: progress stays between 0 and 1, and is 1 only where the reading is steady', () => {
  const readings = fc.array(fc.record({ gapMs: fc.integer({ min: -200, max: 4000 }), c: between(-5, 5) }), {
    maxLength: 120,
  });
  fc.assert(
    fc.property(readings, fc.constantFrom('ice', 'boiling', 'contact'), (all, kind) => {
      let tMs = 0;
      let state = startWaiting(kind);
      for (const { gapMs, c } of all) {
        tMs += gapMs;
        state = addReading(state, tMs, c);
        const { progress, steady, spreadK } = waitingOf(state);
        expect(progress).toBeGreaterThanOrEqual(0);
        expect(progress === 1).toBe(steady);
        expect(spreadK).toBeGreaterThanOrEqual(0);
      }
      expect(JSON.parse(JSON.stringify(state))).toEqual(state);
    }),
    { numRuns: 500 },
  );
});
