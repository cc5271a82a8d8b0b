import { z } from 'zod';
import { pieceNoteDraftSchema } from '../messages/piece.ts';

/** What named persons said of pieces, beside the sessions: entries of the shop's journal, which only grows. */
export const pieceNoteSchema = z.strictObject({
  /** The client's id of the command, so that a retry never doubles. */
  commandId: z.string(),
  piece: z.string(),
  atUtcMs: z.number().int(),
  note: pieceNoteDraftSchema,
});
export type PieceNote = z.infer<typeof pieceNoteSchema>;
