import { z } from 'zod';

/** Whether anybody could hear an alarm: what pages say of their sound, and what follows from it. */

/**
 * The one thing that a client may say over `/stream`: whether its sound is armed and runs. It says so again while that
 * holds, since a page that is frozen or gone can't take it back.
 */
export const soundFrameSchema = z.strictObject({ kind: z.literal('sound'), armed: z.boolean() });
export type SoundFrame = z.infer<typeof soundFrameSchema>;

/** A page with sound says so again at least this often, ms … */
export const SOUND_SAID_EVERY_MS = 2500;
/** … and counts no more once it has not for this long, ms. */
export const SOUND_HOLDS_MS = 7000;

export const hearingSchema = z.strictObject({
  /** Pages whose sound is armed and runs. That somebody hears it can't be known. */
  armedPages: z.number().int().min(0),
  /** True where a plate is or may be hot and no page has its sound on: an alarm would go unheard. */
  unheard: z.boolean(),
});
