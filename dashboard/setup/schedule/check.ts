import {
  type HeatScheduleDraft,
  type HeatStage,
  heatScheduleDraftSchema,
} from '../../../shared/heat/schedule.ts';
import { ABSOLUTE_ZERO_C } from '../../../shared/units/temperature.ts';
import { issueSentence } from '../../../shared/words/issue.ts';
import { fieldWords, scheduleWords } from '../../../shared/words/setup.ts';
import { type Typed, temperatureTyped } from '../fields/number.ts';
import { type ScheduleForm, type StageForm, stageNumbers } from './form.ts';

/** Whether a form can be saved: the values it stands for, or what is wrong, each beside its field. */
export interface Checked {
  /** Null while anything is wrong. */
  readonly values: HeatScheduleDraft | null;
  /** By the key of the place, what would be right. */
  readonly errors: ReadonlyMap<string, string>;
}

/** The highest temperature that a schedule takes, degC. */
const HIGHEST_C = 400;

const longest = {
  name: 80,
  fabric: 120,
  limitStanding: 200,
  manual: 200,
  page: 60,
  stageName: 60,
  standing: 200,
};

export function checkForm(form: ScheduleForm): Checked {
  const errors = new Map<string, string>();
  const note = (key: string, error: string): void => {
    if (error !== '' && !errors.has(key)) errors.set(key, error);
  };
  note('name', nameError(form.name, longest.name));
  note('fabric', tooLong(form.fabric, longest.fabric));
  note('limitStanding', tooLong(form.limitStanding, longest.limitStanding));
  note('fabricLimit', temperatureError(form.fabricLimit, form));
  if (form.cementLimit.text.trim() !== '') note('cementLimit', temperatureError(form.cementLimit, form));
  note(
    'manual',
    sourceError(form.manual, form.page, { most: longest.manual, missing: scheduleWords.manualMissing }),
  );
  note(
    'page',
    sourceError(form.page, form.manual, { most: longest.page, missing: scheduleWords.pageMissing }),
  );
  for (const stage of form.stages) checkStage(stage, form, note);
  if (errors.size > 0) return { values: null, errors };
  return parsed(draftOf(form), errors);
}

function checkStage(stage: StageForm, form: ScheduleForm, note: (key: string, error: string) => void): void {
  const key = (field: string): string => `${stage.id}.${field}`;
  note(key('name'), nameError(stage.name, longest.stageName));
  note(key('standing'), tooLong(stage.standing, longest.standing));
  for (const field of stageNumbers) note(key(field), temperatureError(stage[field], form));
  const { low, target, high } = stage;
  const said = (typed: Typed): string => shown(typed, form);
  if (isOver(low, high, true)) note(key('low'), scheduleWords.lowOverHigh(said(high)));
  else if (isOver(low, target) || isOver(target, high))
    note(key('target'), scheduleWords.targetOutside(said(low), said(high)));
  if (isOver(target, form.fabricLimit)) note(key('target'), scheduleWords.overLimit(said(form.fabricLimit)));
}

/** Whether one is over the other, as far as both can be read; `orAlike`: or the same. */
const isOver = (one: Typed, other: Typed, orAlike = false): boolean =>
  one.value !== null &&
  other.value !== null &&
  (one.value > other.value || (orAlike && one.value === other.value));

const shown = (typed: Typed, { unit }: ScheduleForm): string =>
  `${typed.value === null ? typed.text : temperatureTyped(typed.value, unit).text} °${unit}`;

function temperatureError(typed: Typed, form: ScheduleForm): string {
  if (typed.value === null) return fieldWords.notANumber(`°${form.unit}`);
  const highest = temperatureTyped(HIGHEST_C, form.unit);
  if (typed.value > HIGHEST_C || typed.value < ABSOLUTE_ZERO_C)
    return scheduleWords.tooHot(shown(highest, form));
  return '';
}

const nameError = (text: string, most: number): string =>
  text.trim() === '' ? fieldWords.empty : tooLong(text, most);

const tooLong = (text: string, most: number): string =>
  text.trim().length > most ? fieldWords.tooLong(most, text.trim().length) : '';

function sourceError(
  text: string,
  other: string,
  { most, missing }: { readonly most: number; readonly missing: string },
): string {
  if (text.trim() === '' && other.trim() !== '') return missing;
  return tooLong(text, most);
}

function draftOf(form: ScheduleForm): unknown {
  const manual = form.manual.trim();
  return {
    name: form.name.trim(),
    fabric: form.fabric.trim(),
    stages: form.stages.map(stageDraftOf),
    fabricLimitC: form.fabricLimit.value,
    cementLimitC: form.cementLimit.text.trim() === '' ? null : form.cementLimit.value,
    limitStanding: form.limitStanding.trim(),
    source: manual === '' ? null : { manual, page: form.page.trim() },
  };
}

const stageDraftOf = ({
  id,
  name,
  low,
  target,
  high,
  standing,
}: StageForm): Readonly<Record<Exclude<keyof HeatStage, 'restLimitS'>, unknown>> => ({
  id,
  name: name.trim(),
  lowC: low.value,
  targetC: target.value,
  highC: high.value,
  standing: standing.trim(),
});

/** The schema has the last word: what it refuses beyond the checks above stands beside the whole form. */
function parsed(draft: unknown, errors: Map<string, string>): Checked {
  const read = heatScheduleDraftSchema.safeParse(draft, { reportInput: true });
  if (read.success) return { values: read.data, errors };
  for (const issue of read.error.issues) {
    const sentence = issueSentence(issue, scheduleWords.whole);
    errors.set('whole', [errors.get('whole') ?? '', sentence].join(' ').trim());
  }
  return { values: null, errors };
}
