import { z } from 'zod';
import { motionCheckSchema } from '../iron/motion/check.ts';
import { toleranceClasses } from '../thermocouple/tolerance.ts';
import { thermocoupleTypes } from '../thermocouple/types.ts';

/** What the user has settled about a probe. */

/** `device/name`; the device part may itself hold slashes. */
export const probeIdSchema = z
  .string()
  .max(300)
  .regex(/^.+\/[A-Za-z0-9_-]{1,16}$/, 'a device and a probe name with "/" between them');

const toleranceClassSchema = z.enum(toleranceClasses);
const mountingKSchema = z.number().min(0).max(50).nullable();
export const lagSchema = z
  .strictObject({
    tauS: z.number().gt(0).max(120),
    standardS: z.number().min(0).max(120),
    measuredAt: z.iso.datetime({ offset: true }),
  })
  .nullable();

export const probeDraftSchema = z.strictObject({
  label: z.string().trim().min(1).max(60),
  /** Thermocouple type, for lines that carry `uv` and `cj`. */
  thermocouple: z.enum(thermocoupleTypes),
  /** The unit of a temperature that the device linearised itself. */
  unit: z.enum(['degC', 'degF']),
  /** These stay as they were where they are left out. */
  toleranceClass: toleranceClassSchema.optional(),
  mountingK: mountingKSchema.optional(),
  lag: lagSchema.optional(),
  /** What is still and what is moving on its line, from the check in Setup; null or left out: not checked. */
  motion: motionCheckSchema.nullable().optional(),
});

export const probeSettingsSchema = probeDraftSchema.safeExtend({
  id: probeIdSchema,
  /** Tolerance class of its wire: counts until a calibration gives better. */
  toleranceClass: toleranceClassSchema,
  /** What its mounting may take off a reading, K either way, as the user states it; null: this program's allowance. */
  mountingK: mountingKSchema,
  /** Its time constant with the standard uncertainty, s, from a step; null: not measured. */
  lag: lagSchema,
});

export type ProbeDraft = z.infer<typeof probeDraftSchema>;
export type ProbeSettings = z.infer<typeof probeSettingsSchema>;

/** How a probe's numbers are made, as text: what differs in it is not to be held together. */
export const conversionOf = ({ thermocouple, unit }: Pick<ProbeSettings, 'thermocouple' | 'unit'>): string =>
  `${thermocouple}, ${unit}`;

/** How a probe is set up that nobody has said anything of yet. */
export const unknownProbe = {
  thermocouple: 'K',
  unit: 'degC',
  toleranceClass: 'astm-standard',
  mountingK: null,
  lag: null,
} as const satisfies Omit<ProbeSettings, 'id' | 'label'>;
