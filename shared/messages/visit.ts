import { z } from 'zod';
import { contactBys, type Spot } from '../heat/work/visit.ts';
import { sideIdSchema } from '../piece/piece.ts';

/** What is told of one stay of the iron on the work, in whatever answer. */

/** A stage as it was when it was reached. */
export const reachedSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  lowC: z.number(),
  targetC: z.number(),
});

export const visitPlaceSchema = z.strictObject({
  piece: z.string(),
  side: sideIdSchema,
  /** Null: the whole side, or somewhere on it. */
  area: z.string().nullable(),
});

/** A spot as it is told; null: unassigned. */
export const visitPlaceOf = (spot: Spot | null): z.infer<typeof visitPlaceSchema> | null =>
  spot === null ? null : { piece: spot.piece, side: spot.side, area: spot.area };

export const visitHeat = {
  /** The place was passed by "next", or gone on with after a break, and not confirmed. */
  presumed: z.boolean(),
  contactBy: z.enum(contactBys),
  contactMs: z.number(),
  /** Of the plate in contact, degC, with what that may be off by; null where nothing was read. */
  peakC: z.number().nullable(),
  guardBandK: z.number(),
  /** The highest that the fabric came to by its first-order response, degC. */
  fabricC: z.number().nullable(),
  reached: reachedSchema.nullable(),
  inBandMs: z.number(),
  /** A lap over the whole side. */
  lapDone: z.boolean(),
};
