import { z } from 'zod';
import { alarmChanges } from '../alarm/record.ts';
import { markSchema } from './command.ts';
import { alarmLiveSchema, liveSchema, probeLiveSchema, situationSchema } from './live.ts';

/** What is told of an alarm: its changes, and that it is the same one with another peak, reason or priority. */
export const toldChanges = [...alarmChanges, 'updated'] as const;
export type ToldChange = (typeof toldChanges)[number];

/**
 * What `/stream` sends. `epoch` names one run of the daemon; `seq` rises by one with every message that the
 * daemon makes. Readings and the situation carry the newest state and may be thinned out for a slow client, so `seq`
 * may skip; alarms and marks are never left out. A client that comes back with `?epoch=…&after=SEQ` gets
 * what it missed, or a snapshot where that is no longer at hand.
 */
const stamp = { epoch: z.string(), seq: z.number().int().min(0) };

export const streamMessageSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...stamp, kind: z.literal('snapshot'), live: liveSchema }),
  z.strictObject({ ...stamp, kind: z.literal('readings'), probes: z.array(probeLiveSchema).readonly() }),
  z.strictObject({
    ...stamp,
    kind: z.literal('alarm'),
    change: z.enum(toldChanges),
    alarm: alarmLiveSchema,
  }),
  z.strictObject({ ...stamp, kind: z.literal('mark'), iron: z.string(), mark: markSchema }),
  z.strictObject({ ...stamp, kind: z.literal('situation'), situation: situationSchema }),
  /** Sent once a second where there is nothing else to say: its absence means that the daemon is lost. */
  z.strictObject({ ...stamp, kind: z.literal('beat') }),
]);

export type StreamMessage = z.infer<typeof streamMessageSchema>;

/**
 * Without any message for this long, a page treats the daemon as lost, ms. It has to say so within two seconds, and it
 * looks at its clock every quarter of a second only.
 */
export const DAEMON_LOST_AFTER_MS = 1600;
/** The daemon says something at least this often, ms. */
export const BEAT_MS = 700;
