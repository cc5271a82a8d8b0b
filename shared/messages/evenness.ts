import { z } from 'zod';
import { keptPlateSchema, spotPlaces, typedSpotSchema } from '../iron/spots.ts';
import { plateTemperatureC } from '../units/plate-temperature.ts';

/** How evenly an iron's plate is hot, as the API tells it, and the spot readings that are typed for it. */

const k = z.number();

/** `Evenness` says what each value is. */
export const evennessSchema = z.strictObject({
  /** By its probes, means over their last whole cycles; or by spots typed from a hand thermometer. */
  by: z.enum(['probes', 'typed']),
  /** Ids of probes, or places of spots. */
  hottest: z.string(),
  coldest: z.string(),
  spreadK: k.min(0),
  /** What the spread may be off by, K (k = 2): within it there may be none. */
  offByK: k.min(0),
  /** The probe that leads, or the place of the probe; and how far the hottest is over it. */
  lead: z.string(),
  overLeadK: k.nullable(),
  count: z.number().int().min(2),
});

export const ironEvennessSchema = z.strictObject({
  iron: z.string(),
  simulated: z.boolean(),
  spots: z
    .array(
      typedSpotSchema.unwrap().safeExtend({
        /** Over the probe's place, K; null before that is typed, or where probe or calibration are other ones now. */
        overProbeK: k.nullable(),
      }),
    )
    .readonly(),
  looks: keptPlateSchema.shape.looks,
  typed: evennessSchema.nullable(),
  probes: evennessSchema.nullable(),
  /** What the limits count on top for the probe that leads, and what the advice for the dial counts, K. */
  limitsOverK: k.min(0),
  adviceOverK: k.min(0),
});

/** What was read from a hand thermometer at a place of the plate, now: the probe's reading is taken with it. */
export const spotDraftSchema = z.strictObject({
  place: z.enum(spotPlaces),
  readC: plateTemperatureC,
  /** What the hand thermometer may be off by, K either way. */
  thermometerK: z.number().gt(0).max(20),
});
export const wrongSpotSchema = z.strictObject({ place: z.enum(spotPlaces) });
/** Nothing has to be said with it. */
export const forgetSpotsSchema = z.strictObject({});

export type EvennessShown = z.infer<typeof evennessSchema>;
export type IronEvenness = z.infer<typeof ironEvennessSchema>;
export type SpotDraft = z.infer<typeof spotDraftSchema>;
