import { computed, effect, signal } from '@preact/signals';
import { z } from 'zod';
import { type HeatSchedule, heatScheduleSchema } from '../../../shared/heat/schedule.ts';
import { tabKeep } from '../../parts/browser.ts';
import { unit } from '../../parts/unit.ts';
import { emptyTyped } from '../fields/number.ts';
import { formInUnit, formOf, type ScheduleForm } from './form.ts';
import { noShrink } from './shrink-form.ts';

/** Schedules that are being changed on this page. They outlive a change of view, and a reload of the page. */

export interface Draft {
  /** The version that it was made from; one that does not exist yet has version 0. */
  readonly base: HeatSchedule;
  readonly form: ScheduleForm;
}

const typedSchema = z.strictObject({ text: z.string(), value: z.number().nullable() });
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

const NAME = 'schedules-typed';

function kept(): Readonly<Record<string, Draft>> {
  try {
    return z.record(z.string(), draftSchema).parse(JSON.parse(tabKeep.read(NAME) ?? '{}'));
  } catch {
    return {};
  }
}

/** By the schedule's id. */
export const drafts = signal<Readonly<Record<string, Draft>>>(kept());

effect(() => {
  const shown = unit.value;
  const all = Object.entries(drafts.value);
  if (all.some(([, draft]) => draft.form.unit !== shown))
    drafts.value = Object.fromEntries(
      all.map(([id, draft]) => [id, { ...draft, form: formInUnit(draft.form, shown) }]),
    );
  else tabKeep.write(NAME, JSON.stringify(drafts.value));
});

export const isUnsaved = computed(() => Object.keys(drafts.value).length > 0);

/** The form of a schedule: what is typed of it, else what its newest version has. */
export const formNow = (schedule: HeatSchedule): ScheduleForm =>
  drafts.value[schedule.id]?.form ?? formOf(schedule, unit.value);

/** Takes what was typed. What is the same as its version again, and no new schedule, is no draft any more. */
export function type(schedule: HeatSchedule, form: ScheduleForm): void {
  const base = drafts.peek()[schedule.id]?.base ?? schedule;
  setDraft(schedule.id, { base, form });
}

export function setDraft(id: string, draft: Draft): void {
  // Compared letter by letter: "250," on the way to "250,5" already means the same as 250.
  const untouched = JSON.stringify(formOf(draft.base, draft.form.unit)) === JSON.stringify(draft.form);
  if (draft.base.version > 0 && untouched) dropDraft(id);
  else drafts.value = { ...drafts.peek(), [id]: draft };
}

export function dropDraft(id: string): void {
  const { [id]: _dropped, ...others } = drafts.peek();
  drafts.value = others;
}
