import { z } from 'zod';
import { probeIdSchema } from '../thermometer/probe.ts';
import { confidences, USUAL_CONFIDENCE } from '../thermometer/uncertainty.ts';

/** What the user has settled about an iron. */

const soleCm2 = z.number().min(2).max(1000);

export const ironDraftSchema = z.strictObject({
  name: z.string().trim().min(1).max(60),
  /** Probes fitted to its sole plate or in its check pad, each on one iron at most; none: it is read by hand. */
  probes: z.array(probeIdSchema).max(8),
  /** The heat schedule that it works by. */
  scheduleId: z.string().min(1).max(64),
  /** How surely its plate must be under a limit, one-sided (JCGM 106): sets the guard band. Left out: as it was. */
  confidence: z.literal(confidences).optional(),
  /** Area of its sole plate, cm2: scales the time on an area; null or left out: not told. */
  soleCm2: soleCm2.nullable().optional(),
});

export const ironSchema = ironDraftSchema.safeExtend({
  confidence: z.literal(confidences).default(USUAL_CONFIDENCE),
  id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/),
  /** True for the iron of a simulated device: labelled on every screen and record. */
  simulated: z.boolean(),
});

export type IronDraft = z.infer<typeof ironDraftSchema>;
export type Iron = z.infer<typeof ironSchema>;
