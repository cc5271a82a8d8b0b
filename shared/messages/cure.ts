import { z } from 'zod';
import { airHows, airParts, airTemperatureC, relativeHumidityPct } from '../cure/air.ts';
import { cementDraftSchema, cementKinds, cementSchema, dryingStageKinds } from '../cure/cement.ts';
import { airConcernKinds } from '../cure/conditions.ts';
import { learnedSchema } from '../cure/learned.ts';
import { rangeWhys } from '../cure/range.ts';
import { sideIdSchema } from '../piece/piece.ts';
import { coatEndings, coatFounds, fireAnswers } from '../shop/entry.ts';

/** Cements, coats that dry, and the air of the shop. */

const utc = z.iso.datetime({ offset: true });
const commandId = z.string().min(1).max(64).optional();
const id = z.string().max(64);

/** The newest version of each, archived ones too; `learned` by their ids, of those that something was learned of. */
export const cementListSchema = z.strictObject({
  cements: z.array(cementSchema).readonly(),
  learned: z.record(z.string(), learnedSchema),
});

export const cementWriteSchema = cementDraftSchema.safeExtend({
  /** The version that the writer saw, 0 for a new cement; may be given as If-Match instead. */
  basedOn: z.number().int().min(0).optional(),
});

/** What is amiss with the air for a cement; `by`: its instructions, or general coating practice. */
const airConcernSchema = z.strictObject({
  kind: z.enum(airConcernKinds),
  by: z.enum(['instructions', 'practice']),
  /** What it should be: degC, percent, or kelvin over the dew point. */
  limit: z.number(),
  /** Names of the cements that this holds for; empty: for any. */
  cements: z.array(z.string()).readonly(),
});

const airPointSchema = z.strictObject({
  at: utc,
  airC: z.number(),
  rhPct: z.number().nullable(),
  how: z.enum(airHows),
});

/** How a probe that tells of the air stands. */
export const airProbeSchema = z.strictObject({
  probe: z.string(),
  /** What it told last that can be air, to the moment where it is silent, else as far as it changes; null: nothing. */
  told: z.strictObject({ at: utc, airC: z.number(), rhPct: z.number().nullable() }).nullable(),
  /** It has told no air for two minutes, or never. */
  silent: z.boolean(),
  /** What it tells is taken for the air of the shop. */
  heard: z.boolean(),
  /** What it told of late that can't be air: degC or percent, as it came. Nothing goes by it. */
  refused: z.array(z.strictObject({ part: z.enum(airParts), value: z.number(), at: utc })).readonly(),
});

/** The air of the shop: now, as it was, and as it is expected. */
export const airAnswerSchema = z.strictObject({
  /** Null: nothing has been told. */
  now: airPointSchema
    .extend({
      /** Which probe tells it; empty where it was typed or forecast. */
      probe: z.string(),
      /** Null where it can't be said: no humidity, or none at all. */
      dewPointC: z.number().nullable(),
      /** How far the air is over its dew point, K. */
      marginK: z.number().nullable(),
      /** True where it was told so long ago that it may be something else by now. */
      old: z.boolean(),
    })
    .nullable(),
  concerns: z.array(airConcernSchema).readonly(),
  /** The last 24 hours, the oldest first, thinned out to 300 points at most. */
  history: z.array(airPointSchema).readonly(),
  /** What is expected, from now on. */
  forecast: z.array(airPointSchema).readonly(),
  /** The probe that is to tell the air, as the user has chosen; null: whichever is heard. */
  chosen: z.string().nullable(),
  /** Probes that told of it in the last quarter of an hour, and the chosen one. */
  probes: z.array(airProbeSchema).readonly(),
});

export const airSaidSchema = z.strictObject({
  commandId,
  airC: airTemperatureC,
  rhPct: relativeHumidityPct.nullable(),
});

export const forecastSchema = z.strictObject({
  commandId,
  /** Replaces what was forecast before; empty: there is no forecast. */
  points: z
    .array(z.strictObject({ at: utc, airC: airTemperatureC, rhPct: relativeHumidityPct.nullable() }))
    .max(200)
    .readonly(),
});

/** How a coat stands before the stage that is asked about. `may-be-ready`: to be tested; `due`: its latest time is past. */
const coatStates = ['drying', 'may-be-ready', 'due', 'dry'] as const;

const coatStageSchema = z.strictObject({
  kind: z.enum(dryingStageKinds),
  /** When somebody said that it is dry; null: nobody did. */
  saidDry: utc.nullable(),
  saidTacky: utc.nullable(),
  /** When it may be ready at the earliest, most likely, and at the latest; null: not in this air as far as can be seen. */
  earliest: utc.nullable(),
  likely: utc.nullable(),
  latest: utc.nullable(),
});

const coatSchema = z.strictObject({
  id,
  piece: id,
  pieceName: z.string(),
  side: sideIdSchema,
  area: z.string().nullable(),
  /** Piece, side and area in the user's names. */
  placeName: z.string(),
  cement: z.strictObject({
    id,
    version: z.number().int(),
    name: z.string(),
    kind: z.enum(cementKinds),
    /** Nobody has told where its times come from. */
    unconfirmed: z.boolean(),
  }),
  startedAt: utc,
  /** Towards `stage`; `dry` where every stage was said dry. */
  state: z.enum(coatStates),
  /** The stage that is asked about: the latest whose likely time is past, else the first; null: every one was said dry. */
  stage: z.enum(dryingStageKinds).nullable(),
  stages: z.array(coatStageSchema).readonly(),
  /** Id of the command of the last tap on it that can be taken back; null: nobody has tapped. */
  lastTap: z.string().nullable(),
  /** Counts as wet for an iron. */
  wet: z.boolean(),
  /** The air is such that it doesn't dry at all. */
  stands: z.boolean(),
  /** Why the range is as wide as it is, the most telling first. */
  why: z.array(z.enum(rangeWhys)).readonly(),
  /** What was answered about its vapour, until when that stands at the latest; null: nothing that stands. */
  fire: z.strictObject({ answer: z.enum(fireAnswers), until: utc }).nullable(),
});

/** A start that can be taken back still. */
const startedSchema = z.strictObject({
  /** Id of its command. */
  of: z.string(),
  piece: id,
  /** The cement's name. */
  cement: z.string(),
  /** Of each coat, in the user's names. */
  placeNames: z.array(z.string()).readonly(),
  startedAt: utc,
});

/** A coat whose clock was ended. */
const endedSchema = z.strictObject({
  coat: id,
  /** Id of the command that ended it. */
  of: z.string(),
  why: z.enum(coatEndings),
  at: utc,
  piece: id,
  cement: z.string(),
  placeName: z.string(),
});

/** The coats whose clocks run, those that come first, first; and what is asked of the user about them. */
export const coatsAnswerSchema = z.strictObject({
  /** Rises with whatever changes this answer. */
  revision: z.number().int(),
  coats: z.array(coatSchema).readonly(),
  /** Ids of coats whose vapour burns while an iron is hot, and that nothing was answered about. */
  fire: z.array(id).readonly(),
  /** Starts of the last ten minutes, the newest first: those of whose coats none was touched or ended since. */
  started: z.array(startedSchema).readonly(),
  /** Coats that were ended in the last hour, the newest first. */
  ended: z.array(endedSchema).readonly(),
  /** The machine's clock was set while coats dried that are open still: what may be off for that; null: it was not. */
  clock: z.strictObject({ at: utc, byMs: z.number().int(), while: z.enum(['running', 'off']) }).nullable(),
  /** Coats of cements that the settings don't have any more: they count as wet, and can only be ended. */
  amiss: z.array(z.strictObject({ coat: id, text: z.string() })).readonly(),
});

/** Longer ago than this no coat can have been put on that a clock is still started for, s: thirty days. */
export const LONGEST_AGO_S = 30 * 86_400;

/** What the user says of coats. */
export const coatActSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('start'),
    cement: id,
    piece: id,
    /** `area` null: the whole side. */
    places: z
      .array(z.strictObject({ side: sideIdSchema, area: id.nullable() }))
      .min(1)
      .max(400)
      .readonly(),
    /** So long ago it was put on, s. */
    agoS: z.number().min(0).max(LONGEST_AGO_S),
  }),
  z.strictObject({
    kind: z.literal('check'),
    coat: id,
    stage: z.enum(dryingStageKinds),
    found: z.enum(coatFounds),
  }),
  z.strictObject({ kind: z.literal('end'), coat: id, why: z.enum(coatEndings) }),
  z.strictObject({ kind: z.literal('fire-answer'), coat: id, answer: z.enum(fireAnswers) }),
  /** What was said by the command of this id was a mistake; no start of coats that were touched or ended since. */
  z.strictObject({ kind: z.literal('take-back'), of: id }),
]);
export const coatCommandSchema = z.strictObject({ commandId, act: coatActSchema });

export type CementList = z.infer<typeof cementListSchema>;
export type AirConcern = z.infer<typeof airConcernSchema>;
export type AirProbeAnswer = z.infer<typeof airProbeSchema>;
export type AirAnswer = z.infer<typeof airAnswerSchema>;
export type AirSaid = z.infer<typeof airSaidSchema>;
export type Forecast = z.infer<typeof forecastSchema>;
export type CoatStageAnswer = z.infer<typeof coatStageSchema>;
export type CoatAnswer = z.infer<typeof coatSchema>;
export type StartedAnswer = z.infer<typeof startedSchema>;
export type EndedAnswer = z.infer<typeof endedSchema>;
export type CoatState = CoatAnswer['state'];
export type CoatsAnswer = z.infer<typeof coatsAnswerSchema>;
export type CoatAct = z.infer<typeof coatActSchema>;
