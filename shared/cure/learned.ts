import { z } from 'zod';

/** What this shop has taught about a cement: coats dry here in so much of the instructions' time. */
export const learnedSchema = z.strictObject({
  factor: z.number(),
  /** Between these it is with a probability of four in five. */
  low: z.number(),
  high: z.number(),
  /** How many coats have taught it. */
  observations: z.number().int(),
});
export type Learned = z.infer<typeof learnedSchema>;
