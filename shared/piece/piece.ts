import { z } from 'zod';

/** A piece of the aeroplane: its two faces, and the areas on each. A map is immutable: a change makes the next version. */

const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, "_" and "-", at most 64 of them');
const name = z.string().trim().min(1).max(60);

/** The faces of a piece; one that is covered on one side only has side 1. */
export const sideIds = [1, 2] as const;
export type SideId = (typeof sideIds)[number];
export const sideIdSchema = z.literal(sideIds);

/** What an area is: open cloth, or bonded along an edge or under a tape, where the cement limit holds. */
const areaKinds = ['cloth', 'edge', 'tape'] as const;
export type AreaKind = (typeof areaKinds)[number];

/** The largest grid that a side is divided into. */
export const MOST_ROWS = 10;
export const MOST_COLUMNS = 20;

/** One place on one side. It is drawn over the cells from (row, column) on, counted from 0 at the upper left. */
export const areaSchema = z
  .strictObject({
    /** Names it in its piece, on both sides. */
    id,
    side: sideIdSchema,
    name,
    kind: z.enum(areaKinds),
    row: z
      .number()
      .int()
      .min(0)
      .max(MOST_ROWS - 1),
    column: z
      .number()
      .int()
      .min(0)
      .max(MOST_COLUMNS - 1),
    rows: z.number().int().min(1).max(MOST_ROWS),
    columns: z.number().int().min(1).max(MOST_COLUMNS),
  })
  .readonly();

export const pieceDraftSchema = z.strictObject({
  name,
  /** What its frame is made of, in the user's words; may be empty. */
  frame: z.string().trim().max(60),
  /** One for a piece that is covered on one side only. The names are what the user calls the sides. */
  sides: z.array(name).min(1).max(2).readonly(),
  /** The grid that areas are placed on, the same on each side. Edges and tapes lie along it or across it. */
  rows: z.number().int().min(1).max(MOST_ROWS),
  columns: z.number().int().min(1).max(MOST_COLUMNS),
  /** Its size from end to end and across, cm; null: not told, and times on an area can't be scaled by its size. */
  lengthCm: z.number().min(1).max(2000).nullable(),
  widthCm: z.number().min(1).max(2000).nullable(),
  areas: z.array(areaSchema).min(1).max(400).readonly(),
  /** Out of sight, never deleted. */
  archived: z.boolean(),
});

/** One immutable version of a piece. Whether its areas make sense together is checked by `checkPiece`. */
export const pieceSchema = pieceDraftSchema.safeExtend({
  id,
  version: z.number().int().min(1),
  madeAt: z.iso.datetime({ offset: true }),
});

export type Area = z.infer<typeof areaSchema>;
export type PieceDraft = z.infer<typeof pieceDraftSchema>;
export type Piece = z.infer<typeof pieceSchema>;

/** Bonded to the frame: the cement limit holds there. */
export const isBonded = ({ kind }: Pick<Area, 'kind'>): boolean => kind !== 'cloth';

/** The side that faces the other way; of a piece with one side there is none. */
export const otherSide = ({ sides }: Pick<PieceDraft, 'sides'>, side: SideId): SideId | null =>
  sides.length < 2 ? null : side === 1 ? 2 : 1;
