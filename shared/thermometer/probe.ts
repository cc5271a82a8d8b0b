import { z } from 'zod';

/** What the user has settled about a probe. */

export const thermocoupleTypes = ['K', 'J', 'T', 'E', 'N'] as const;
export type ThermocoupleType = (typeof thermocoupleTypes)[number];

/** `device/name`; the device part may itself hold slashes. */
export const probeIdSchema = z
  .string()
  .max(300)
  .regex(/^.+\/[A-Za-z0-9_-]{1,16}$/, 'a device and a probe name with "/" between them');

export const probeDraftSchema = z.strictObject({
  label: z.string().trim().min(1).max(60),
  /** Thermocouple type, for lines that carry `uv` and `cj`. */
  thermocouple: z.enum(thermocoupleTypes),
  /** The unit of a temperature that the device linearised itself. */
  unit: z.enum(['degC', 'degF']),
  /**
   * How far a reading may be from the plate, K: subtracted from a limit before the plate is compared with it
   * (guard band, JCGM 106). It stands in until a calibration gives a measured uncertainty.
   */
  guardBandK: z.number().min(0).max(50),
});

export const probeSettingsSchema = probeDraftSchema.safeExtend({ id: probeIdSchema });

export type ProbeDraft = z.infer<typeof probeDraftSchema>;
export type ProbeSettings = z.infer<typeof probeSettingsSchema>;

/**
 * The tolerance of a standard-class thermocouple, K: the larger of 2.2 K and 0.75 % (ASTM E230, type K), taken
 * below 293 degC where the first is the larger. Not a measurement: it stands in until there is one.
 */
export const UNMEASURED_GUARD_BAND_K = 2.2;
