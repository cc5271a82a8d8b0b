import { z } from 'zod';
import { type HeatSchedule, heatScheduleSchema } from '../../../shared/heat/schedule.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { readSettings, schedules } from '../daemon-settings.ts';
import { emptyTyped, typedSchema } from '../fields/number.ts';
import type { Draft as DraftOf } from '../versioned/kind.ts';
import { versionedStore } from '../versioned/saving.ts';
import { checkForm } from './check.ts';
import { formInUnit, formOf, type ScheduleForm, type ScheduleValues } from './form.ts';
import { merge, type Place } from './merge.ts';
import { noShrink } from './shrink-form.ts';

/** Schedules that are being changed on this page. */

export type Draft = DraftOf<HeatSchedule, ScheduleForm>;

const stageSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  low: typedSchema,
  target: typedSchema,
  high: typedSchema,
  // What was typed before there were these fields has none.
  restLimit: typedSchema.default(emptyTyped),
  standing: z.string(),
});
const shrinkSchema = z.strictObject({
  points: z.array(z.strictObject({ plate: typedSchema, percent: typedSchema })).readonly(),
  standing: z.string(),
});
const draftSchema = z.strictObject({
  base: heatScheduleSchema.safeExtend({ version: z.number().int().min(0) }),
  form: z.strictObject({
    unit: z.enum(['F', 'C']),
    name: z.string(),
    fabric: z.string(),
    stages: z.array(stageSchema).readonly(),
    fabricLimit: typedSchema,
    cementLimit: typedSchema,
    limitStanding: z.string(),
    shrink: shrinkSchema.default(noShrink),
    manual: z.string(),
    page: z.string(),
  }),
});

export const schedulePath = (id: string): string => `/api/schedules/${encodeURIComponent(id)}`;

export const scheduleStore = versionedStore<HeatSchedule, ScheduleValues, ScheduleForm, Place>({
  keptAs: 'schedules-typed',
  draftSchema,
  schema: heatScheduleSchema,
  path: schedulePath,
  all: schedules,
  read: readSettings,
  formOf,
  inUnit: formInUnit,
  check: checkForm,
  merge,
  saved: scheduleWords.saved,
});
