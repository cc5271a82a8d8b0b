import { z } from 'zod';
import { mountings } from '../calibration/calibration.ts';
import { stepKinds } from '../thermometer/lag/step-watch.ts';
import { lagSchema } from '../thermometer/probe.ts';

/** What the API tells of a probe's lag, and takes while it is being measured. */

const foundSchema = z.strictObject({
  /** Time constant and its standard uncertainty (GUM), s. */
  tauS: z.number(),
  standardS: z.number(),
  startC: z.number(),
  endC: z.number(),
  readings: z.number().int(),
});

/** How a step goes: at rest before it, settling after it, and what came of it. */
const stepSchema = z.strictObject({
  kind: z.enum(stepKinds),
  state: z.enum(['resting', 'ready', 'settling', 'found', 'refused']),
  /** The last reading, uncorrected, degC; null where none has come for some seconds. */
  readC: z.number().nullable(),
  /** How much of the rest before the step has held, 0 to 1; 1 once the step may come. */
  progress: z.number().min(0).max(1),
  spreadK: z.number().nullable(),
  /** How long ago the step was seen, s; null before it. */
  sinceS: z.number().nullable(),
  found: foundSchema.nullable(),
  /** Why it came to nothing, and what to do. */
  refused: z.strictObject({ seen: z.string(), action: z.string() }).nullable(),
});

const procedureSchema = z.strictObject({
  mounting: z.enum(mountings),
  /** The steps that a probe so mounted may be given. */
  kinds: z.array(z.enum(stepKinds)).readonly(),
  /** Null between steps. */
  step: stepSchema.nullable(),
  /** Why it can't go on; empty where it can. */
  trouble: z.string(),
});

export const probeLagSchema = z.strictObject({
  probe: z.string(),
  /** The time constant in force; null: not measured. */
  lag: lagSchema,
  /** What is allowed for while it is not measured, s. */
  allowanceS: z.number(),
  /** The one that is being measured; null: none. */
  procedure: procedureSchema.nullable(),
});

export const lagBeginSchema = z.strictObject({ mounting: z.enum(mountings) });
export const lagStepSchema = z.strictObject({ kind: z.enum(stepKinds) });
export const lagPlainSchema = z.strictObject({});

/** One step of a lag that is being measured. */
export type LagAct =
  | ({ readonly act: 'begin' } & z.output<typeof lagBeginSchema>)
  | ({ readonly act: 'step' } & z.output<typeof lagStepSchema>)
  | { readonly act: 'stop' | 'keep' | 'give-up' };

export type ProbeLag = z.output<typeof probeLagSchema>;
export type LagProcedureShown = z.output<typeof procedureSchema>;
export type StepShown = z.output<typeof stepSchema>;
