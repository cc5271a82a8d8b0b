import { z } from 'zod';
import { motionCheckSchema, motionRefusals } from '../iron/motion/check.ts';
import { trialAsksKinds } from '../iron/motion/trial.ts';

/** What the API tells of whether a probe's line says that its iron moves, and takes while that is being checked. */

const trialSchema = z.strictObject({
  /** What the user is to do now. */
  asks: z.enum(trialAsksKinds),
  /** How long that is still asked for, s. */
  leftS: z.number().min(0),
  /** Why it came to nothing; null while it did not. */
  refused: z.enum(motionRefusals).nullable(),
  /** Why what was found could not be kept; empty where nothing stands against it. */
  trouble: z.string(),
});

export const probeMotionSchema = z.strictObject({
  probe: z.string(),
  /** What is still and what is moving on its line; null: not checked. */
  check: motionCheckSchema.nullable(),
  /** Whether a motion value has come on its line since the program was started. */
  onLine: z.boolean(),
  /** The check that is being made; null: none. What was found is kept by itself, and then it is over. */
  trial: trialSchema.nullable(),
});

export const motionPlainSchema = z.strictObject({});

export type ProbeMotion = z.output<typeof probeMotionSchema>;
export type TrialShown = z.output<typeof trialSchema>;
