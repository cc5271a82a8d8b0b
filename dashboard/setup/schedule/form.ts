import type { HeatSchedule, HeatScheduleDraft, HeatStage } from '../../../shared/heat/schedule.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { emptyTyped, figureTyped, inUnit, type Typed, temperatureTyped } from '../fields/number.ts';
import { type ShrinkForm, shrinkFormOf, shrinkInUnit } from './shrink-form.ts';

/** A heat schedule as it stands in the fields of its form: texts, each with what it means where it can be read. */
export interface ScheduleForm {
  readonly unit: TemperatureUnit;
  readonly name: string;
  readonly fabric: string;
  readonly stages: readonly StageForm[];
  readonly fabricLimit: Typed;
  /** An empty text: unset. */
  readonly cementLimit: Typed;
  readonly limitStanding: string;
  readonly shrink: ShrinkForm;
  readonly manual: string;
  readonly page: string;
}

export interface StageForm {
  readonly id: string;
  readonly name: string;
  readonly low: Typed;
  readonly target: Typed;
  readonly high: Typed;
  /** Seconds on one spot. An empty text: as usual. */
  readonly restLimit: Typed;
  readonly standing: string;
}

export const stageNumbers = ['low', 'target', 'high'] as const;
export type StageNumber = (typeof stageNumbers)[number];

/** What a form is made from: any version of a schedule, or one that has none yet. */
export type ScheduleValues = HeatScheduleDraft;

export function formOf(values: ScheduleValues, unit: TemperatureUnit): ScheduleForm {
  const { name, fabric, stages, fabricLimitC, cementLimitC, limitStanding, shrink, source } = values;
  return {
    unit,
    name,
    fabric,
    stages: stages.map((stage) => stageFormOf(stage, unit)),
    fabricLimit: temperatureTyped(fabricLimitC, unit),
    cementLimit: cementLimitC === null ? emptyTyped : temperatureTyped(cementLimitC, unit),
    limitStanding,
    shrink: shrinkFormOf(shrink, unit),
    manual: source?.manual ?? '',
    page: source?.page ?? '',
  };
}

const stageFormOf = (
  { id, name, lowC, targetC, highC, restLimitS, standing }: HeatStage,
  unit: TemperatureUnit,
): StageForm => ({
  id,
  name,
  low: temperatureTyped(lowC, unit),
  target: temperatureTyped(targetC, unit),
  high: temperatureTyped(highC, unit),
  restLimit: restLimitS === undefined ? emptyTyped : figureTyped(restLimitS),
  standing,
});

/** The same form with its temperatures in another unit. */
export function formInUnit(form: ScheduleForm, unit: TemperatureUnit): ScheduleForm {
  if (form.unit === unit) return form;
  return {
    ...form,
    unit,
    stages: form.stages.map((stage) => ({
      ...stage,
      low: inUnit(stage.low, unit),
      target: inUnit(stage.target, unit),
      high: inUnit(stage.high, unit),
    })),
    fabricLimit: inUnit(form.fabricLimit, unit),
    cementLimit: inUnit(form.cementLimit, unit),
    shrink: shrinkInUnit(form.shrink, unit),
  };
}

export const withStage = (form: ScheduleForm, id: string, change: Partial<StageForm>): ScheduleForm => ({
  ...form,
  stages: form.stages.map((stage) => (stage.id === id ? { ...stage, ...change } : stage)),
});

/** A new stage at the end, with the band of the one before it. */
export function withNewStage(form: ScheduleForm, id: string): ScheduleForm {
  const last = form.stages.at(-1);
  const { low, target, high } = last ?? { low: emptyTyped, target: emptyTyped, high: emptyTyped };
  const stage = { id, name: '', low, target, high, restLimit: emptyTyped, standing: '' };
  return { ...form, stages: [...form.stages, stage] };
}

export const withoutStage = (form: ScheduleForm, id: string): ScheduleForm => ({
  ...form,
  stages: form.stages.filter((stage) => stage.id !== id),
});

/** Moves a stage by one place; at the end of the list it stays where it is. */
export function withStageMoved(form: ScheduleForm, id: string, by: -1 | 1): ScheduleForm {
  const from = form.stages.findIndex((stage) => stage.id === id);
  const stage = form.stages[from];
  const other = form.stages[from + by];
  if (stage === undefined || other === undefined) return form;
  const stages = form.stages.map((one, i) => (i === from ? other : i === from + by ? stage : one));
  return { ...form, stages };
}

/** What a version holds, without what the program adds to it. */
export const valuesOf = ({
  id: _id,
  version: _version,
  madeAt: _madeAt,
  ...values
}: HeatSchedule): ScheduleValues => values;
