import { z } from 'zod';
import { probeIdSchema } from '../thermometer/probe.ts';
import { ABSOLUTE_ZERO_C } from '../units/temperature.ts';
import { correctionSchema } from './correction.ts';

/** A calibration of one probe: its points, what they give, and how long that holds. */

/** Melting ice, boiling water, a trusted contact thermometer on the plate at working temperature. */
export const pointKinds = ['ice', 'boiling', 'contact'] as const;
export type PointKind = (typeof pointKinds)[number];

/** A loose probe may be dipped; a fitted one is on an iron or in a check pad. */
export const mountings = ['loose', 'fitted'] as const;
export type Mounting = (typeof mountings)[number];

/** Fewer than this and a point has not been waited for. */
export const LEAST_READINGS = 5;
export const MOST_POINTS = 20;

const celsius = z.number().min(ABSOLUTE_ZERO_C).max(2000);

export const calibrationPointSchema = z
  .strictObject({
    kind: z.enum(pointKinds),
    /** Mean of the probe's readings, uncorrected. */
    readingC: celsius,
    /** Their standard deviation while waiting. */
    readingSpreadK: z.number().min(0),
    readings: z.number().int().min(1),
    /** The probe's step as it was seen; null where none was. */
    resolutionK: z.number().min(0).max(50).nullable(),
    referenceC: celsius,
    /** Standard uncertainty of the reference. */
    referenceUK: z.number().gt(0).max(50),
    /** Of boiling water: pressure where the water stands, altitude, or both. */
    pressureHpa: z.number().nullable(),
    altitudeM: z.number().nullable(),
    /** The trusted thermometer, or what the pressure was read from. */
    instrument: z.string().trim().max(120),
    takenAt: z.iso.datetime({ offset: true }),
  })
  .readonly();

export type CalibrationPoint = z.infer<typeof calibrationPointSchema>;

/** What a user makes; the daemon adds id, version, time and the correction that `fitCorrection` gives. */
const calibrationDraftSchema = z
  .strictObject({
    probe: probeIdSchema,
    /** Who made it; empty where nobody said. */
    by: z.string().trim().max(80),
    mounting: z.enum(mountings),
    points: z.array(calibrationPointSchema).min(1).max(MOST_POINTS).readonly(),
    /** When it is due again, ms UTC; null: no date was set. */
    dueUtcMs: z.number().int().min(0).nullable(),
  })
  .superRefine(({ mounting, points }, ctx) => {
    if (mounting === 'loose') return;
    for (const [i, { kind }] of points.entries()) {
      if (kind !== 'contact')
        ctx.addIssue({
          code: 'custom',
          path: ['points', i, 'kind'],
          message: 'a fitted probe never meets water: compare it with a contact thermometer',
        });
    }
  });

/** One immutable version: never edited, only superseded by a later one of the same probe. */
export const calibrationSchema = calibrationDraftSchema.safeExtend({
  id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, "_" and "-", at most 64 of them'),
  version: z.number().int().min(1),
  /** The iron that the probe was fitted to when it was made; null: to none. */
  iron: z.string().max(64).nullable(),
  madeAt: z.iso.datetime({ offset: true }),
  correction: correctionSchema,
});

export type Calibration = z.infer<typeof calibrationSchema>;

/** True once its due date has come. */
export const isDue = ({ dueUtcMs }: Pick<Calibration, 'dueUtcMs'>, nowUtcMs: number): boolean =>
  dueUtcMs !== null && nowUtcMs >= dueUtcMs;

/** The calibration of a probe that holds: its latest version; null while it has none. */
export function currentCalibration(all: readonly Calibration[], probe: string): Calibration | null {
  const own = all.filter((calibration) => calibration.probe === probe);
  return own.reduce<Calibration | null>(
    (latest, one) => (latest === null || one.version > latest.version ? one : latest),
    null,
  );
}

/** The number that a probe's next calibration gets. */
export const nextCalibrationVersion = (all: readonly Calibration[], probe: string): number =>
  (currentCalibration(all, probe)?.version ?? 0) + 1;

/** True where the mounting stands in the correction: made on the plate of this iron, with the probe fitted as it works. */
export const isMadeInPlace = (made: Pick<Calibration, 'mounting' | 'iron'>, iron: string): boolean =>
  made.mounting === 'fitted' && made.iron === iron;
