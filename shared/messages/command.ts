import { z } from 'zod';
import { alarmKinds } from '../alarm/record.ts';
import { dialMarkSchema } from '../iron/dial/mark.ts';
import { places } from '../iron/place.ts';
import { plateTemperatureC } from '../units/plate-temperature.ts';

/** What a page or another program may ask the daemon to do. */

/** Made by the client, so that a retry never doubles; without one the daemon makes one and a retry may double. */
const commandId = z.string().min(1).max(64).optional();

const alarmKey = {
  iron: z.string().min(1).max(64),
  kind: z.enum(alarmKinds),
  probe: z.string().max(300).nullable().default(null),
};

export const markSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('stage'), stageId: z.string().max(64).nullable() }),
  z.strictObject({ kind: z.literal('place'), place: z.enum(places) }),
  /** What the dial stands at, as printed on it; null: not said any more. */
  z.strictObject({ kind: z.literal('dial'), mark: dialMarkSchema.nullable() }),
  /** What a hand thermometer reads on the plate now, degC. */
  z.strictObject({ kind: z.literal('typed'), plateC: plateTemperatureC }),
  z.strictObject({ kind: z.literal('note'), text: z.string().trim().min(1).max(500) }),
]);

export const startSessionSchema = z.strictObject({ commandId, iron: z.string().min(1).max(64) });
export const stopSessionSchema = z.strictObject({ commandId });
export const markCommandSchema = z.strictObject({ commandId, mark: markSchema });
/** What was read from a hand thermometer, degC; recorded in the session that runs, else in one that begins with it. */
export const typedReadingSchema = z.strictObject({ commandId, plateC: plateTemperatureC });
export const acknowledgeSchema = z.strictObject({ commandId, ...alarmKey });
export const silenceSchema = z.strictObject({
  commandId,
  ...alarmKey,
  /** Seconds; an alarm of priority 3 is silenced for 60 s at most. */
  forS: z.number().min(1).max(600).default(60),
});
export const chooseSourceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('serial'), path: z.string().min(1).max(300) }),
  z.strictObject({ kind: z.literal('simulate') }),
]);

/** What became of a command. `kept` is false where it took effect but could not be written to the book. */
export const outcomeSchema = z.strictObject({
  commandId: z.string(),
  session: z.string().nullable(),
  kept: z.boolean(),
});

/** Every refusal of the API has this form. */
export const problemSchema = z.strictObject({
  error: z.strictObject({
    /** What was wrong, where, and what would be right. */
    message: z.string(),
    /** The field that was wrong, as a path, where one was. */
    where: z.string(),
  }),
});

export type ChooseSource = z.infer<typeof chooseSourceSchema>;
export type Outcome = z.infer<typeof outcomeSchema>;
export type Problem = z.infer<typeof problemSchema>;
