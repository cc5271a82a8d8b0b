import { z } from 'zod';
import { aheadWhats, notComparedWhys } from '../heat/work/balance.ts';
import { nextWhys } from '../heat/work/next.ts';
import { contactBys } from '../heat/work/visit.ts';
import { pieceDraftSchema, pieceSchema, sideIdSchema } from '../piece/piece.ts';
import { pieceNoteDraftSchema } from '../shop/note.ts';
import { reachedSchema, visitHeat, visitPlaceSchema } from './visit.ts';

/** Pieces, what was said of the work on them, and what they have had. */

const utc = z.iso.datetime({ offset: true });
const commandId = z.string().min(1).max(64).optional();

/** The newest version of each piece. */
export const pieceListSchema = z.strictObject({ pieces: z.array(pieceSchema).readonly() });

export const pieceWriteSchema = pieceDraftSchema.safeExtend({
  /** The version that the writer saw, 0 for a new piece; may be given as If-Match instead. */
  basedOn: z.number().int().min(0).optional(),
});

/**
 * What the user says while working, of the iron in hand.
 * - `piece`: this piece now; where no side is named, the one that was worked last
 * - `area`: on this area; saying the area again that is presumed confirms it
 * - `next`: on the area that is proposed
 * - `turned`: the piece was turned over
 * - `lap-done`: one lap over the whole side that is up
 * - `in-hand`: this iron was taken up, the others stand on their rests
 * - `off-work`: lifted off, but not on its rest
 * - `undo`: the last of these was a mistake
 * - `stage`: the stage that is being worked; it is chosen anew rather than undone
 */
export const workActSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('piece'), piece: z.string().max(64), side: sideIdSchema.optional() }),
  z.strictObject({ kind: z.literal('area'), area: z.string().max(64) }),
  z.strictObject({ kind: z.literal('next') }),
  z.strictObject({ kind: z.literal('turned') }),
  z.strictObject({ kind: z.literal('lap-done') }),
  z.strictObject({ kind: z.literal('in-hand') }),
  z.strictObject({ kind: z.literal('on-work') }),
  z.strictObject({ kind: z.literal('off-work') }),
  z.strictObject({ kind: z.literal('on-rest') }),
  z.strictObject({ kind: z.literal('undo') }),
  z.strictObject({ kind: z.literal('stage'), stageId: z.string().max(64).nullable() }),
]);
export const workCommandSchema = z.strictObject({
  commandId,
  /** Left out: the iron in hand. */
  iron: z.string().max(64).optional(),
  act: workActSchema,
});

export const pieceNoteCommandSchema = z.strictObject({ commandId, note: pieceNoteDraftSchema });

const areaHeatSchema = z.strictObject({
  reached: reachedSchema.nullable(),
  presumed: z.boolean(),
  peakC: z.number().nullable(),
  guardBandK: z.number(),
  contactMs: z.number(),
  inBandMs: z.number(),
  lapsAtStage: z.number(),
  laps: z.number(),
  lastAt: utc.nullable(),
});

const nextSchema = z.strictObject({
  side: sideIdSchema,
  area: z.string(),
  why: z.enum(nextWhys),
});

const visitAnswerSchema = z.strictObject({
  session: z.string(),
  /** With the session it names the visit. */
  n: z.number().int(),
  at: utc,
  lengthMs: z.number().int(),
  iron: z.string(),
  simulated: z.boolean(),
  /** As it was marked; null: unassigned. */
  place: visitPlaceSchema.nullable(),
  placeName: z.string(),
  /** Where it counts, if a named person corrected it. */
  corrected: z.strictObject({ place: visitPlaceSchema.nullable(), by: z.string(), at: utc }).nullable(),
  ...visitHeat,
});

const balanceSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('not-compared'),
    why: z.enum(notComparedWhys),
  }),
  z.strictObject({ kind: z.literal('even') }),
  /** A side is ahead of the other, or one end of a side of its other end, by so many laps. */
  z.strictObject({
    kind: z.literal('ahead'),
    what: z.enum(aheadWhats),
    side: sideIdSchema,
    byLaps: z.number(),
  }),
]);

/** What a piece has had, and what comes next. Sides stand in the order of their numbers. */
export const pieceHeatSchema = z.strictObject({
  piece: pieceSchema,
  /** Rises with whatever changes this answer. */
  revision: z.number().int(),
  areas: z.record(z.string(), areaHeatSchema),
  sides: z
    .array(
      z.strictObject({
        /** The stage that all its areas have had; null: some have had none. */
        reached: reachedSchema.nullable(),
        /** Laps over it at that stage, weighted by the size of its areas. */
        laps: z.number(),
        tight: z.strictObject({ by: z.string(), at: utc }).nullable(),
        /** Hotter than this on the side now would be out of order, degC; null: nothing is. */
        capC: z.number().nullable(),
      }),
    )
    .readonly(),
  balance: balanceSchema,
  overruled: z.strictObject({ by: z.string(), why: z.string(), at: utc }).nullable(),
  /** Null where everything has had what the stage that is being worked asks for. */
  next: nextSchema.nullable(),
  /** The newest first, a hundred at most; `unassigned` are those of no piece, of sessions that had this piece in hand or none. */
  visits: z.array(visitAnswerSchema).readonly(),
  unassigned: z.array(visitAnswerSchema).readonly(),
  /** Open items of this piece. */
  suspects: z.array(z.string()).readonly(),
});

/** Where an iron works, as far as the user said. */
export const atLiveSchema = z.strictObject({
  piece: z.string(),
  pieceName: z.string(),
  side: sideIdSchema,
  sideName: z.string(),
  area: z.string().nullable(),
  areaName: z.string().nullable(),
  bonded: z.boolean(),
  presumed: z.boolean(),
  /** In contact there in this visit, ms, and by what that is known. */
  contactMs: z.number(),
  contactBy: z.enum(contactBys),
  /** The time that this area should take at most, scaled by its size, ms; null where its size is not known. */
  limitMs: z.number().nullable(),
  /** Name of the stage that this visit has reached. */
  reached: z.string().nullable(),
});

/** The work of the whole bench, as part of the situation. */
export const workLiveSchema = z.strictObject({
  /** The iron in hand; null: none was taken up. */
  inHand: z.string().nullable(),
  /** Ids of the pieces that were in hand last, the newest first, four at most; of none that is archived. */
  recent: z.array(z.string()).readonly(),
  /** Rises with every change of what pieces have had: what was read of it is then old. */
  heatRevision: z.number().int(),
  /** Rises with every change of the coats that dry, of their times and of the air: what was read of them is then old. */
  coatRevision: z.number().int(),
  /** Whether what earlier sessions did to pieces has been read from the book. */
  ready: z.boolean(),
});

export type WorkAct = z.infer<typeof workActSchema>;
export type WorkCommand = z.infer<typeof workCommandSchema>;
export type PieceHeat = z.infer<typeof pieceHeatSchema>;
export type Balance = z.infer<typeof balanceSchema>;
export type Next = z.infer<typeof nextSchema>;
export type VisitAnswer = z.infer<typeof visitAnswerSchema>;
export type AtLive = z.infer<typeof atLiveSchema>;
export type WorkLive = z.infer<typeof workLiveSchema>;
