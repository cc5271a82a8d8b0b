import { z } from 'zod';
import { sideIdSchema } from '../piece/piece.ts';

const name = z.string().trim().min(1).max(80);

/** What a named person says of a piece beside its sessions. It is added, never changed. */
export const pieceNoteDraftSchema = z.discriminatedUnion('kind', [
  /** "Tight", by eye and hand: theirs, not ours. */
  z.strictObject({ kind: z.literal('tight'), side: sideIdSchema, by: name }),
  /** The order was overruled: no warning of it stands for this piece from now on. */
  z.strictObject({ kind: z.literal('overruled'), by: name, why: z.string().trim().max(500) }),
  /** A visit was somewhere else; null: on none of the pieces. The original stays beside it. */
  z.strictObject({
    kind: z.literal('corrected'),
    session: z.string().max(64),
    /** The visit's number in its session. */
    visit: z.number().int(),
    to: z.strictObject({ side: sideIdSchema, area: z.string().max(64).nullable() }).nullable(),
    by: name,
  }),
]);
export type PieceNoteDraft = z.infer<typeof pieceNoteDraftSchema>;

/** What named persons said of pieces, beside the sessions: entries of the shop's journal, which only grows. */
const pieceNoteSchema = z.strictObject({
  /** The client's id of the command, so that a retry never doubles. */
  commandId: z.string(),
  piece: z.string(),
  atUtcMs: z.number().int(),
  note: pieceNoteDraftSchema,
});
export type PieceNote = z.infer<typeof pieceNoteSchema>;
