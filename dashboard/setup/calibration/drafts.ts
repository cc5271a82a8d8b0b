import { effect, signal } from '@preact/signals';
import { z } from 'zod';
import type { PointKind } from '../../../shared/calibration/calibration.ts';
import type { CalibrationKeep } from '../../../shared/messages/calibration.ts';
import { HPA_PER_INHG, M_PER_FT } from '../../../shared/units/air.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { tabKeep } from '../../parts/browser.ts';
import { readKept } from '../../parts/keep.ts';
import { unit } from '../../parts/unit.ts';
import {
  differenceTyped,
  emptyTyped,
  inUnit,
  readDifference,
  readNumber,
  readTemperature,
} from '../fields/number.ts';

/** What is typed beside a calibration's points. It outlives a change of view, and a reload of the page. */

const typedSchema = z.strictObject({ text: z.string(), value: z.number().nullable() });

const draftSchema = z.strictObject({
  /** The unit in which temperatures were typed. */
  unit: z.enum(['F', 'C']),
  plate: typedSchema,
  accuracy: typedSchema,
  as: z.enum(['limits', 'expanded', 'standard']),
  instrument: z.string(),
  pressure: z.string(),
  pressureIn: z.enum(['hPa', 'inHg']),
  altitude: z.string(),
  altitudeIn: z.enum(['m', 'ft']),
  by: z.string(),
  due: z.enum(['none', '3', '6', '12']),
});

export type CalibrationDraftTyped = z.infer<typeof draftSchema>;

const NAME = 'calibrations-typed';

const kept = (): Readonly<Record<string, CalibrationDraftTyped>> =>
  readKept(tabKeep.read(NAME), z.record(z.string(), draftSchema)) ?? {};

const drafts = signal<Readonly<Record<string, CalibrationDraftTyped>>>(kept());

effect(() => {
  const shown = unit.value;
  const all = Object.entries(drafts.value);
  if (all.some(([, draft]) => draft.unit !== shown))
    drafts.value = Object.fromEntries(all.map(([id, draft]) => [id, draftInUnit(draft, shown)]));
  else tabKeep.write(NAME, JSON.stringify(drafts.value));
});

/** The same in another unit: what is no number stays as it was typed. */
export function draftInUnit(draft: CalibrationDraftTyped, shown: TemperatureUnit): CalibrationDraftTyped {
  const { plate, accuracy } = draft;
  return {
    ...draft,
    unit: shown,
    plate: inUnit(plate, shown),
    accuracy: accuracy.value === null ? accuracy : differenceTyped(accuracy.value, shown),
  };
}

const DUE_USUALLY = '12';

export function emptyDraft(shown: TemperatureUnit): CalibrationDraftTyped {
  return {
    unit: shown,
    plate: emptyTyped,
    accuracy: emptyTyped,
    as: 'limits',
    instrument: '',
    pressure: '',
    pressureIn: shown === 'F' ? 'inHg' : 'hPa',
    altitude: '',
    altitudeIn: shown === 'F' ? 'ft' : 'm',
    by: '',
    due: DUE_USUALLY,
  };
}

export const typedOf = (probe: string): CalibrationDraftTyped =>
  drafts.value[probe] ?? emptyDraft(unit.value);

export function type(probe: string, change: Partial<CalibrationDraftTyped>): void {
  const before = drafts.peek()[probe] ?? emptyDraft(unit.peek());
  drafts.value = { ...drafts.peek(), [probe]: { ...before, ...change } };
}

/** The next point has a temperature of its own; the thermometer, the place and the person stay the same. */
export const pointKept = (probe: string): void => type(probe, { plate: emptyTyped });

export function endDraft(probe: string): void {
  const { [probe]: _gone, ...others } = drafts.peek();
  drafts.value = others;
}

export const readPlate = (text: string): Pick<CalibrationDraftTyped, 'plate'> => ({
  plate: readTemperature(text, unit.peek()),
});
export const readAccuracy = (text: string): Pick<CalibrationDraftTyped, 'accuracy'> => ({
  accuracy: readDifference(text, unit.peek()),
});

export type FieldErrors = Partial<Record<'plate' | 'accuracy' | 'pressure' | 'altitude', string>>;

/** What is sent to keep a point, or what is wrong with the fields. What is merely missing is for the daemon to say. */
export function keepOf(
  kind: PointKind,
  draft: CalibrationDraftTyped,
): { readonly body: CalibrationKeep } | { readonly errors: FieldErrors } {
  if (kind === 'ice') return { body: { kind, instrument: '' } };
  const { instrument } = draft;
  if (kind === 'contact') {
    const { plate, accuracy, as } = draft;
    const isUnsaid = accuracy.text.trim() === '';
    const wrong = !isUnsaid && (accuracy.value === null || accuracy.value <= 0);
    if (plate.value === null || wrong)
      return {
        errors: {
          ...(plate.value === null ? { plate: calibratingWords.number } : {}),
          ...(wrong ? { accuracy: calibratingWords.positive } : {}),
        },
      };
    const stated = accuracy.value === null ? null : { k: accuracy.value, as };
    return { body: { kind, plateC: plate.value, stated, instrument } };
  }
  const pressure = numberOrNone(draft.pressure);
  const altitude = numberOrNone(draft.altitude);
  if (pressure === 'wrong' || altitude === 'wrong')
    return {
      errors: {
        ...(pressure === 'wrong' ? { pressure: calibratingWords.number } : {}),
        ...(altitude === 'wrong' ? { altitude: calibratingWords.number } : {}),
      },
    };
  const perHpa = draft.pressureIn === 'inHg' ? HPA_PER_INHG : 1;
  const perM = draft.altitudeIn === 'ft' ? M_PER_FT : 1;
  return {
    body: {
      kind,
      pressureHpa: pressure === null ? null : pressure * perHpa,
      altitudeM: altitude === null ? null : altitude * perM,
      instrument,
    },
  };
}

/** Null where nothing is typed. */
function numberOrNone(text: string): number | null | 'wrong' {
  return text.trim() === '' ? null : (readNumber(text) ?? 'wrong');
}

const DAY_MS = 86_400_000;
const DAYS_A_YEAR = 365;
const MONTHS_A_YEAR = 12;

/** When it is due again, ms UTC, as chosen; null: no date. */
export const dueUtcMs = ({ due }: CalibrationDraftTyped, nowUtcMs: number): number | null =>
  due === 'none' ? null : Math.round(nowUtcMs + (Number(due) / MONTHS_A_YEAR) * DAYS_A_YEAR * DAY_MS);
