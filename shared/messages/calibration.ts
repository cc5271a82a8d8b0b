import { z } from 'zod';
import {
  calibrationPointSchema,
  calibrationSchema,
  mountings,
  pointKinds,
} from '../calibration/calibration.ts';
import { correctionSchema } from '../calibration/correction.ts';

/** What the API tells of a probe's calibrations, and takes while one is being made. */

/** In which unit sentences give temperatures; figures are always in degC. */
export const wordsInSchema = z.strictObject({ unit: z.enum(['C', 'F']).default('C') });

const partNames = [
  'calibration',
  'wire',
  'resolution',
  'cold-junction',
  'mounting',
  'lag',
  'unevenness',
] as const;
const partNotes = [
  'calibrated',
  'calibrated-outside',
  'class',
  'class-outside',
  'step',
  'step-unknown',
  'board',
  'board-calibrated',
  'mounting-allowed',
  'mounting-pad',
  'mounting-stated',
  'mounting-in-place',
  'at-rest',
  'moving',
  'spots',
] as const;

/** How far what the probe reads now can be trusted, part by part (GUM), and the guard band that it makes (JCGM 106). */
const budgetSchema = z.strictObject({
  parts: z
    .array(
      z.strictObject({
        name: z.enum(partNames),
        uK: z.number().min(0),
        standing: z.enum(['measured', 'tolerance', 'stated']),
        note: z.enum(partNotes),
      }),
    )
    .readonly(),
  /** Combined standard uncertainty. */
  uK: z.number().min(0),
  confidence: z.number(),
  guardBandK: z.number().min(0),
  /** What of the guard band is the known excess of the plate's hottest spot over the probe's place. */
  overK: z.number().min(0),
  allowanceOnly: z.boolean(),
});

const residualsK = z.array(z.number()).readonly();
/** Expanded uncertainty (k = 2) of the correction along the readings, for drawing. */
const along = z.array(z.strictObject({ readC: z.number(), bandK: z.number().min(0) })).readonly();

/** What points give, or why they give nothing. */
const outcomeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('correction'),
    correction: correctionSchema,
    /** How far each point's corrected reading is under its reference, K. */
    residualsK,
    along,
    /** At temperatures that the iron works at: the ± that this calibration would give, and the one in force. */
    at: z.array(z.strictObject({ atC: z.number(), guardBandK: z.number(), inForceK: z.number() })).readonly(),
  }),
  z.strictObject({ kind: z.literal('refused'), seen: z.string(), action: z.string() }),
]);

const waitingSchema = z.strictObject({
  kind: z.enum(pointKinds),
  /** 0 to 1; 1 once it is steady, and only then. */
  progress: z.number().min(0).max(1),
  steady: z.boolean(),
  meanC: z.number().nullable(),
  spreadK: z.number().nullable(),
  driftKPerMin: z.number().nullable(),
  readings: z.number().int().min(0),
  resolutionK: z.number().nullable(),
});

const procedureSchema = z.strictObject({
  mounting: z.enum(mountings),
  /** The points that a probe so mounted may be taken to. */
  kinds: z.array(z.enum(pointKinds)).readonly(),
  points: z.array(calibrationPointSchema).readonly(),
  /** Null between points. */
  waiting: waitingSchema.nullable(),
  /** Null before the first point. */
  outcome: outcomeSchema.nullable(),
  /** Why it can't go on; empty where it can. */
  trouble: z.string(),
});

export const probeCalibrationsSchema = z.strictObject({
  probe: z.string(),
  /** Every version, the newest first: that is the one in force. */
  versions: z.array(z.strictObject({ calibration: calibrationSchema, residualsK, along })).readonly(),
  /** True once the one in force is past its due date. */
  due: z.boolean(),
  /** Of what it reads now; null while it gives no valid reading. */
  budget: budgetSchema.nullable(),
  /** The one that is being made; null: none. */
  procedure: procedureSchema.nullable(),
});

export const calibrationBeginSchema = z.strictObject({ mounting: z.enum(mountings) });
/** `null` ends the waiting. */
export const calibrationWaitSchema = z.strictObject({ kind: z.enum(pointKinds).nullable() });

const instrument = z.string().trim().max(120).default('');
const statedSchema = z.strictObject({
  k: z.number().max(50),
  as: z.enum(['limits', 'expanded', 'standard']),
});
/** What the point's own temperature follows from. */
export const calibrationKeepSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('ice'), instrument }),
  z.strictObject({
    kind: z.literal('boiling'),
    pressureHpa: z.number().nullable().default(null),
    altitudeM: z.number().nullable().default(null),
    instrument,
  }),
  z.strictObject({
    kind: z.literal('contact'),
    /** What the trusted thermometer shows. */
    plateC: z.number(),
    /** How good it is; null is refused with what is missing. */
    stated: statedSchema.nullable().default(null),
    instrument,
  }),
]);
/** By its place in the list of points. */
export const calibrationDropSchema = z.strictObject({ point: z.number().int().min(0) });
export const calibrationSaveSchema = z.strictObject({
  by: z.string().trim().max(80).default(''),
  /** When it is due again, ms UTC; null: no date. */
  dueUtcMs: z.number().int().min(0).nullable().default(null),
});
export const calibrationGiveUpSchema = z.strictObject({});

/** One step of a calibration that is being made. */
export type CalibrationAct =
  | ({ readonly act: 'begin' } & z.output<typeof calibrationBeginSchema>)
  | ({ readonly act: 'wait' } & z.output<typeof calibrationWaitSchema>)
  | { readonly act: 'keep'; readonly taken: CalibrationKeep }
  | ({ readonly act: 'drop' } & z.output<typeof calibrationDropSchema>)
  | ({ readonly act: 'save' } & z.output<typeof calibrationSaveSchema>)
  | { readonly act: 'give-up' };

export type CalibrationKeep = z.output<typeof calibrationKeepSchema>;
export type CalibrationBudget = z.output<typeof budgetSchema>;
export type ProbeCalibrations = z.output<typeof probeCalibrationsSchema>;
export type ProcedureShown = z.output<typeof procedureSchema>;
export type OutcomeShown = z.output<typeof outcomeSchema>;
export type WaitingShown = z.output<typeof waitingSchema>;
