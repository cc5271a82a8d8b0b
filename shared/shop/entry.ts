import { z } from 'zod';
import { airTemperatureC, forecastPointSchema, relativeHumidityPct } from '../cure/air.ts';
import { dryingStageKinds } from '../cure/cement.ts';
import { sideIdSchema } from '../piece/piece.ts';

/** The shop's journal: what happened in it beside the irons' sessions. It only grows. */

const id = z.string().min(1).max(64);
const utcMs = z.number().int();

/** What a tap says of a coat at a stage. */
export const coatFounds = ['dry', 'tacky'] as const;
export type CoatFound = (typeof coatFounds)[number];

/** Why the clock of a coat is done with: worked on, or put on by mistake. */
export const coatEndings = ['done', 'mistake'] as const;
export type CoatEnding = (typeof coatEndings)[number];

/** What is done about a coat whose vapour burns while an iron is hot. */
export const fireAnswers = ['iron-off', 'elsewhere', 'stopped'] as const;
export type FireAnswer = (typeof fireAnswers)[number];

const shopHappenedSchema = z.discriminatedUnion('kind', [
  /** Cement was put on; a coat for each place. */
  z.strictObject({
    kind: z.literal('coats'),
    cement: id,
    cementVersion: z.number().int().min(1),
    piece: id,
    pieceVersion: z.number().int().min(1),
    /** `area` null: the whole side. `coat` is the coat's own id. */
    places: z
      .array(z.strictObject({ coat: id, side: sideIdSchema, area: id.nullable() }).readonly())
      .min(1)
      .max(400)
      .readonly(),
    fromUtcMs: utcMs,
  }),
  /**
   * Somebody touched it. `curedS`: how far it had come by then, in seconds at its instructions' conditions: at the least
   * where it was tacky, at the most where it was dry.
   */
  z.strictObject({
    kind: z.literal('checked'),
    coat: id,
    stage: z.enum(dryingStageKinds),
    found: z.enum(coatFounds),
    curedS: z.number().min(0),
  }),
  /** Its clock is done with. */
  z.strictObject({ kind: z.literal('ended'), coat: id, why: z.enum(coatEndings) }),
  z.strictObject({ kind: z.literal('fire-answer'), coat: id, answer: z.enum(fireAnswers) }),
  /** What the last tap of these said was a mistake: `of` is the id of its command. */
  z.strictObject({ kind: z.literal('taken-back'), of: id }),
  z.strictObject({
    kind: z.literal('air'),
    airC: airTemperatureC,
    rhPct: relativeHumidityPct.nullable(),
    how: z.enum(['probe', 'typed']),
    /** Which probe told it; empty where it was typed. */
    probe: z.string().max(200),
  }),
  /** Replaces the forecast of before; without points there is none. */
  z.strictObject({ kind: z.literal('forecast'), points: z.array(forecastPointSchema).max(200).readonly() }),
  /** What was learned of a cement until now no longer counts. */
  z.strictObject({ kind: z.literal('learn-anew'), cement: id }),
  /** The program runs, and coats are open, but nothing else happened for long. */
  z.strictObject({ kind: z.literal('runs') }),
  /**
   * The machine's clock was set by so much, and all that happened before is moved along with it.
   * - `off`: it stood behind when the program started; nobody knows how long that was
   * - `boot`: it was set right soon after the machine was started
   * - `simulated`: simulated time, which may go faster than life, was ahead of it when the program started, and goes on
   *
   * What happened before the clock was wrong (`startUtcMs`, by the clock as it was) is moved by `earlierByMs` instead: at a
   * `boot` back to the time that it had, which was right. `startUtcMs` null: all is moved by `byMs`.
   */
  z.strictObject({
    kind: z.literal('clock'),
    byMs: z.number().int(),
    while: z.enum(['running', 'off', 'boot', 'simulated']),
    startUtcMs: utcMs.nullable(),
    earlierByMs: z.number().int(),
  }),
]);
export type ShopHappened = z.infer<typeof shopHappenedSchema>;

export const shopEntrySchema = z.strictObject({
  /** The client's id of the command, or the daemon's own, so that a retry never doubles. */
  commandId: z.string().min(1).max(64),
  atUtcMs: utcMs,
  /** IANA name of the zone that the machine was set to. */
  zone: z.string().max(64),
  simulated: z.boolean(),
  happened: shopHappenedSchema,
});
export type ShopEntry = z.infer<typeof shopEntrySchema>;
