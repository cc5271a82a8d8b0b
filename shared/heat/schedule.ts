import { z } from 'zod';
import { plateTemperatureC } from '../units/plate-temperature.ts';

/** The heat schedule: the stages and limits for one fabric and process, and where they come from. */

const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, "_" and "-", at most 64 of them');

const heatStageSchema = z
  .strictObject({
    id,
    name: z.string().trim().min(1).max(60),
    lowC: plateTemperatureC,
    targetC: plateTemperatureC,
    highC: plateTemperatureC,
    /** Where the values come from, in a few words. */
    standing: z.string().max(200),
    /** How long the iron may rest on one spot, s; left out: as usual. */
    restLimitS: z.number().min(0.5).max(120).optional(),
  })
  .refine((s) => s.lowC < s.highC && s.lowC <= s.targetC && s.targetC <= s.highC, {
    message: 'low, target and high must rise in that order',
    path: ['targetC'],
  })
  .readonly();

/** Free shrinkage of loose cloth by plate temperature, from a manual. It explains stages, and judges nothing. */
const shrinkTableSchema = z
  .strictObject({
    points: z
      .array(z.strictObject({ plateC: plateTemperatureC, percent: z.number().min(0).max(100) }).readonly())
      .min(2)
      .max(20)
      .readonly(),
    /** Where the values come from, in a few words. */
    standing: z.string().max(200),
  })
  .superRefine(({ points }, ctx) => {
    for (const [i, point] of points.entries()) {
      const before = points[i - 1];
      if (before === undefined) continue;
      if (point.plateC <= before.plateC)
        ctx.addIssue({
          code: 'custom',
          path: ['points', i, 'plateC'],
          message: 'the temperatures must rise from point to point',
        });
      if (point.percent < before.percent)
        ctx.addIssue({
          code: 'custom',
          path: ['points', i, 'percent'],
          message: 'the shrinkage must not fall from point to point',
        });
    }
  })
  .readonly();

export type ShrinkTable = z.infer<typeof shrinkTableSchema>;

/** Where a stage says nothing else the iron may rest on one spot for so long, s (our own starting value). */
export const USUAL_REST_LIMIT_S = 5;

/** What a user writes of a schedule; the daemon adds the version and the time. */
export const heatScheduleDraftSchema = z
  .strictObject({
    name: z.string().trim().min(1).max(80),
    fabric: z.string().max(120),
    stages: z.array(heatStageSchema).min(1).max(12).readonly(),
    /** The plate temperature never to exceed on the fabric. */
    fabricLimitC: plateTemperatureC,
    /** The highest plate temperature over a bonded edge or tape; null: unset, and shown as unset. */
    cementLimitC: plateTemperatureC.nullable(),
    limitStanding: z.string().max(200),
    /** Left out: the handbook's points (`handbookShrink`). */
    shrink: shrinkTableSchema.optional(),
    /** Manual and page that the limits come from; null: the schedule is unconfirmed. */
    source: z
      .strictObject({ manual: z.string().trim().min(1).max(200), page: z.string().trim().min(1).max(60) })
      .nullable(),
  })
  .superRefine((s, ctx) => {
    const seen = new Set<string>();
    for (const [i, stage] of s.stages.entries()) {
      if (seen.has(stage.id))
        ctx.addIssue({ code: 'custom', path: ['stages', i, 'id'], message: `"${stage.id}" is used twice` });
      seen.add(stage.id);
      if (stage.targetC > s.fabricLimitC)
        ctx.addIssue({
          code: 'custom',
          path: ['stages', i, 'targetC'],
          message: 'the target is over the fabric limit',
        });
    }
  });

export type HeatScheduleDraft = z.infer<typeof heatScheduleDraftSchema>;

/** One immutable version of a schedule. */
export const heatScheduleSchema = heatScheduleDraftSchema.safeExtend({
  id,
  version: z.number().int().min(1),
  madeAt: z.iso.datetime({ offset: true }),
});

export type HeatStage = z.infer<typeof heatStageSchema>;
export type HeatSchedule = z.infer<typeof heatScheduleSchema>;

/** A schedule counts as confirmed once the user has entered where its limits come from. */
export const isConfirmed = (schedule: Pick<HeatSchedule, 'source'>): boolean => schedule.source !== null;
