import { z } from 'zod';
import { heatScheduleDraftSchema, heatScheduleSchema } from '../heat/schedule.ts';
import { ironSchema } from '../iron/iron.ts';
import { probeSettingsSchema } from '../thermometer/probe.ts';
import { lineFormSchema, protocolForm } from './line-form.ts';

/** Settings as the API lists and takes them. An iron is written as `ironDraftSchema`, a probe as `probeDraftSchema`. */

/** A new version of a heat schedule, or a new one. */
export const scheduleWriteSchema = heatScheduleDraftSchema.safeExtend({
  /** The version that the writer saw, 0 for a new schedule; may be given as If-Match instead. */
  basedOn: z.number().int().min(0).optional(),
});

export const scheduleListSchema = z.strictObject({ schedules: z.array(heatScheduleSchema).readonly() });
export const ironListSchema = z.strictObject({ irons: z.array(ironSchema).readonly() });
export const probeListSchema = z.strictObject({ probes: z.array(probeSettingsSchema).readonly() });

/** Every version of one schedule, the newest first. */
export const scheduleVersionsSchema = z.strictObject({ versions: z.array(heatScheduleSchema).readonly() });

/** What a user calls a device. */
export const deviceNameDraftSchema = z.strictObject({
  /** Empty: it is called by its path again. */
  name: z.string().trim().max(60),
});

/** What is settled about a device. */
export const deviceSettingsSchema = deviceNameDraftSchema.safeExtend({
  id: z.string().min(1).max(300),
  /** Settings of before forms could be settled have none. */
  form: lineFormSchema.default(protocolForm),
});
export const deviceListSchema = z.strictObject({ devices: z.array(deviceSettingsSchema).readonly() });

export type DeviceSettings = z.infer<typeof deviceSettingsSchema>;
