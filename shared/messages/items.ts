import { z } from 'zod';
import { momentSchema } from './sessions.ts';
import { visitPlaceSchema } from './visit.ts';

/** Open items: areas that have to be examined, and what was found. */

/** What a named person found, in words. */
const closingSchema = z.strictObject({
  /** Who found it. */
  by: z.string(),
  /** What was found. */
  found: z.string(),
  at: z.iso.datetime({ offset: true }),
});

/** An area suspect: the plate was over a limit and not on its rest. */
export const itemSchema = z.strictObject({
  id: z.string(),
  session: z.string(),
  iron: z.strictObject({ id: z.string(), name: z.string() }),
  simulated: z.boolean(),
  /** When the plate went over the limit. */
  over: momentSchema,
  /** When it was back under; null where that was not seen in this session. */
  back: momentSchema.nullable(),
  /** True while it may still be over in a session that runs. */
  standing: z.boolean(),
  /** From over to back, or to the session's end, ms. */
  lengthMs: z.number().int().min(0),
  /** The highest reading meanwhile, degC; where `back` is null it may have been higher. Null: not known. */
  peakC: z.number().nullable(),
  /** What the peak may be off by, K either way; null: not known. */
  guardBandK: z.number().nullable(),
  /** Which limit was passed. */
  limit: z.enum(['fabric', 'cement']),
  /** That limit as it was then, degC; null where the session does not say. */
  limitC: z.number().nullable(),
  /** Name of the stage being worked, if one was chosen. */
  stage: z.string().nullable(),
  place: z.enum(['on-work', 'unknown']),
  probes: z.array(z.string()).readonly(),
  /** Where on a piece it was, as far as it was marked; null: unassigned. */
  where: visitPlaceSchema.nullable(),
  whereName: z.string(),
  /** Null while the item is open. */
  closing: closingSchema.nullable(),
});
/** Newest first. */
export const itemListSchema = z.strictObject({ items: z.array(itemSchema).readonly() });

const said = (most: number) => z.string().trim().min(1).max(most);

export const closeItemSchema = z.strictObject({
  /** Made by the client, so that a retry never doubles. */
  commandId: z.string().min(1).max(64).optional(),
  by: said(80),
  found: said(1000),
});

export type Item = z.infer<typeof itemSchema>;
