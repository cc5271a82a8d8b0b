import { z } from 'zod';
import {
  type Cement,
  type CementDraft,
  type CementKind,
  cementKinds,
  dryingStageKinds,
} from '../../../shared/cure/cement.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import {
  emptyTyped,
  figureTyped,
  inUnit,
  isTyped,
  type Typed,
  temperatureTyped,
  typedSchema,
} from '../fields/number.ts';
import { isGiven, lastOf, type StageTime, stageTimeSchema, timesOf } from './times.ts';

/** A cement as it stands in the fields of its form: texts, each with what it means where it can be read. */
export const cementFormSchema = z.strictObject({
  unit: z.enum(['F', 'C']),
  name: z.string(),
  /** Null: not chosen yet. */
  kind: z.enum(cementKinds).nullable(),
  times: z.record(z.enum(dryingStageKinds), stageTimeSchema),
  at: typedSchema,
  atRh: typedSchema,
  low: typedSchema,
  high: typedSchema,
  lowRh: typedSchema,
  highRh: typedSchema,
  cementLimit: typedSchema,
  energy: typedSchema,
  /** What was said of its vapour, for kinds that don't settle it; null: nothing. */
  burns: z.boolean().nullable(),
  batch: z.string(),
  expires: z.string(),
  manual: z.string(),
  page: z.string(),
  standing: z.string(),
  archived: z.boolean(),
});
export type CementForm = Readonly<z.infer<typeof cementFormSchema>>;

/** Whether the vapour burns, where the kind settles it; null: it has to be asked. */
export const burnsByKind = (kind: CementKind | null): boolean | null => {
  if (kind === 'solvent-borne') return true;
  return kind === 'water-borne' ? false : null;
};

const temperatureOr = (c: number | null, unit: TemperatureUnit): Typed =>
  c === null ? emptyTyped : temperatureTyped(c, unit);
const figureOr = (value: number | null): Typed => (value === null ? emptyTyped : figureTyped(value));

export function formOf(cement: CementDraft, unit: TemperatureUnit): CementForm {
  // Only one in which nothing was entered yet has no stages.
  if (cement.stages.length === 0) return emptyForm(unit);
  const { name, kind, stages, airLimits, flammable, batch, source, standing, archived } = cement;
  return {
    unit,
    name,
    kind,
    times: timesOf(stages),
    at: temperatureTyped(cement.atC, unit),
    atRh: figureTyped(cement.atRhPct),
    low: temperatureOr(airLimits.lowC, unit),
    high: temperatureOr(airLimits.highC, unit),
    lowRh: figureOr(airLimits.lowRhPct),
    highRh: figureOr(airLimits.highRhPct),
    cementLimit: temperatureOr(cement.cementLimitC, unit),
    energy: figureOr(cement.energyKJPerMol),
    burns: burnsByKind(kind) === null ? flammable : null,
    batch,
    expires: cement.expiresOn ?? '',
    manual: source?.manual ?? '',
    page: source?.page ?? '',
    standing,
    archived,
  };
}

/** A form in which nothing stands yet. */
export const emptyForm = (unit: TemperatureUnit): CementForm => ({
  unit,
  name: '',
  kind: null,
  times: timesOf([]),
  at: emptyTyped,
  atRh: emptyTyped,
  low: emptyTyped,
  high: emptyTyped,
  lowRh: emptyTyped,
  highRh: emptyTyped,
  cementLimit: emptyTyped,
  energy: emptyTyped,
  burns: null,
  batch: '',
  expires: '',
  manual: '',
  page: '',
  standing: '',
  archived: false,
});

/** The same form with its temperatures in another unit. */
export const formInUnit = (form: CementForm, unit: TemperatureUnit): CementForm =>
  form.unit === unit
    ? form
    : {
        ...form,
        unit,
        at: inUnit(form.at, unit),
        low: inUnit(form.low, unit),
        high: inUnit(form.high, unit),
        cementLimit: inUnit(form.cementLimit, unit),
      };

/** What a version holds, without what the program adds to it. */
export const valuesOf = ({ id: _id, version: _version, madeAt: _madeAt, ...values }: Cement): CementDraft =>
  values;

/** A day as it is typed: year, month, day, with "-", "." or "/" between; null: nothing, or none. */
export function readDay(text: string): string | null {
  const [, year, month, day] = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(text.trim()) ?? [];
  if (year === undefined || month === undefined || day === undefined) return null;
  const iso = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return z.iso.date().safeParse(iso).success ? iso : null;
}

const stagesOf = (times: CementForm['times']): unknown =>
  dryingStageKinds
    .map((kind): readonly [string, StageTime] => [kind, times[kind]])
    .filter(([, time]) => isGiven(time))
    .map(([kind, time]) => ({ kind, fromS: time.from.value, toS: lastOf(time).value }));

const valueOf = (typed: Typed): number | null => (isTyped(typed) ? typed.value : null);

/** What the form stands for, as far as its fields can be read. */
export const draftOf = (form: CementForm): unknown => ({
  name: form.name.trim(),
  kind: form.kind,
  stages: stagesOf(form.times),
  atC: form.at.value,
  atRhPct: form.atRh.value,
  airLimits: {
    lowC: valueOf(form.low),
    highC: valueOf(form.high),
    lowRhPct: valueOf(form.lowRh),
    highRhPct: valueOf(form.highRh),
  },
  cementLimitC: valueOf(form.cementLimit),
  energyKJPerMol: form.kind === 'water-borne' ? null : valueOf(form.energy),
  flammable: burnsByKind(form.kind) ?? form.burns,
  batch: form.batch.trim(),
  expiresOn: readDay(form.expires),
  source: form.manual.trim() === '' ? null : { manual: form.manual.trim(), page: form.page.trim() },
  standing: form.standing.trim(),
  archived: form.archived,
});
