import { z } from 'zod';

/** What `/api/health` answers: that the program runs, which one, and whether what happens is being kept. */
export const healthSchema = z.strictObject({
  name: z.literal('soleplate'),
  version: z.string(),
  /** Names this run of the program. */
  epoch: z.string(),
  uptimeMs: z.number().int().min(0),
  keeping: z.strictObject({ kept: z.boolean(), detail: z.string() }),
  /** How many pages and programs are connected to the stream. */
  streamClients: z.number().int().min(0),
});

export type Health = z.infer<typeof healthSchema>;
