import * as fc from 'fast-check';
import { type Air, type AirPoint, airHows } from '../../../shared/cure/air.ts';
import { type Cement, cementKinds, type DryingStage, dryingStageKinds } from '../../../shared/cure/cement.ts';
import { shippedCements } from '../../../shared/cure/shipped.ts';

/** Cements, air and taps of any kind that the schemas let through. */

export const NOW_MS = Date.UTC(2026, 2, 14, 8);
export const HOUR_MS = 3_600_000;
const WEEK_MS = 7 * 24 * HOUR_MS;

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const stages: fc.Arbitrary<readonly DryingStage[]> = fc
  .record({
    kinds: fc.subarray([...dryingStageKinds], { minLength: 1 }),
    times: fc.array(between(1, 3 * 86_400), { minLength: 8, maxLength: 8 }),
  })
  .map(({ kinds, times }) => {
    const rising = [...times].sort((a, b) => a - b);
    return kinds.map((kind, i) => ({ kind, fromS: rising[i] ?? 1, toS: rising[i + kinds.length] ?? 1 }));
  });

/** @param kinds of these only */
export const cements = (kinds: readonly Cement['kind'][] = cementKinds): fc.Arbitrary<Cement> =>
  fc
    .record({
      kind: fc.constantFrom(...kinds),
      stages,
      atC: between(-30, 60),
      atRhPct: between(1, 99),
      energyKJPerMol: fc.option(between(5, 200)),
    })
    .map((own) => {
      const [example] = shippedCements;
      if (example === undefined) throw new Error('no cement is shipped');
      return { ...example, ...own, flammable: own.kind === 'solvent-borne' };
    });

export const airs: fc.Arbitrary<Air> = fc.record({
  airC: between(-30, 60),
  rhPct: fc.option(fc.oneof(between(0, 100), fc.constantFrom(0, 100))),
});

const timesMs = fc.integer({ min: NOW_MS - WEEK_MS, max: NOW_MS + HOUR_MS });

export const airPoints: fc.Arbitrary<readonly AirPoint[]> = fc.array(
  fc
    .record({
      air: airs,
      atUtcMs: timesMs,
      how: fc.constantFrom(...airHows).filter((how) => how !== 'forecast'),
    })
    .map(({ air, ...rest }) => ({ ...air, ...rest })),
  { maxLength: 30 },
);

export const forecasts = fc.array(
  fc
    .record({ air: airs, atUtcMs: fc.integer({ min: NOW_MS - WEEK_MS, max: NOW_MS + WEEK_MS }) })
    .map(({ air, atUtcMs }) => ({ ...air, atUtcMs })),
  { maxLength: 10 },
);

export const checks = fc.array(
  fc.record({
    atUtcMs: timesMs,
    stage: fc.constantFrom(...dryingStageKinds),
    found: fc.constantFrom('dry' as const, 'tacky' as const),
    curedS: fc.oneof(between(0, 86_400), fc.constant(0), between(0, 1e12)),
  }),
  { maxLength: 6 },
);

export const observations = fc.array(
  fc.record({
    fromUtcMs: timesMs,
    stages: fc.array(
      fc.record({
        aboveS: fc.oneof(fc.constant(0), between(0, 1e5), between(0, 1e12)),
        belowS: fc.option(fc.oneof(between(0, 1e5), between(0, 1e12))),
        stageS: between(1, 60 * 86_400),
      }),
      { maxLength: 4 },
    ),
  }),
  { maxLength: 8 },
);
