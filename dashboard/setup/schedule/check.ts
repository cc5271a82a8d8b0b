import {
  type HeatScheduleDraft,
  type HeatStage,
  heatScheduleDraftSchema,
} from '../../../shared/heat/schedule.ts';
import { ABSOLUTE_ZERO_C } from '../../../shared/units/temperature.ts';
import { fieldWords, scheduleWords } from '../../../shared/words/setup.ts';
import { isOver, nameError, parsedDraft, rangeError, shown, sourceError, tooLong } from '../fields/checks.ts';
import { isTyped, type Typed, temperatureTyped } from '../fields/number.ts';
import type { Checked } from '../versioned/kind.ts';
import { type ScheduleForm, type StageForm, stageNumbers } from './form.ts';
import type { ShrinkForm } from './shrink-form.ts';

/** Whether a schedule's form can be saved, or what is wrong. */

type CheckedSchedule = Checked<HeatScheduleDraft>;

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

export function checkForm(form: ScheduleForm): CheckedSchedule {
  const errors = new Map<string, string>();
  const note = (key: string, error: string): void => {
    if (error !== '' && !errors.has(key)) errors.set(key, error);
  };
  note('name', nameError(form.name, longest.name));
  note('fabric', tooLong(form.fabric, longest.fabric));
  note('limitStanding', tooLong(form.limitStanding, longest.limitStanding));
  note('fabricLimit', temperatureError(form.fabricLimit, form));
  if (isTyped(form.cementLimit)) note('cementLimit', temperatureError(form.cementLimit, form));
  note(
    'manual',
    sourceError(form.manual, form.page, { most: longest.manual, missing: scheduleWords.manualMissing }),
  );
  note(
    'page',
    sourceError(form.page, form.manual, { most: longest.page, missing: scheduleWords.pageMissing }),
  );
  for (const stage of form.stages) checkStage(stage, form, note);
  checkShrink(form, note);
  if (errors.size > 0) return { values: null, errors };
  return parsedDraft(heatScheduleDraftSchema, draftOf(form), scheduleWords.whole);
}

function checkStage(stage: StageForm, form: ScheduleForm, note: (key: string, error: string) => void): void {
  const key = (field: string): string => `${stage.id}.${field}`;
  note(key('name'), nameError(stage.name, longest.stageName));
  note(key('standing'), tooLong(stage.standing, longest.standing));
  for (const field of stageNumbers) note(key(field), temperatureError(stage[field], form));
  if (isTyped(stage.restLimit))
    note(key('restLimit'), rangeError(stage.restLimit, restS, scheduleWords.seconds));
  const { low, target, high } = stage;
  const said = (typed: Typed): string => shown(typed, form.unit);
  if (isOver(low, high, true)) note(key('low'), scheduleWords.lowOverHigh(said(high)));
  else if (isOver(low, target) || isOver(target, high))
    note(key('target'), scheduleWords.targetOutside(said(low), said(high)));
  if (isOver(target, form.fabricLimit)) note(key('target'), scheduleWords.overLimit(said(form.fabricLimit)));
}

/** How long a stage may let the iron rest on one spot, s, and how much cloth may shrink, %; as the schema has it. */
const restS = { least: 0.5, most: 120 };
const shrunkPercent = { least: 0, most: 100 };

/** Each point, and whether it rises from the one before. */
function checkShrink(form: ScheduleForm, note: (key: string, error: string) => void): void {
  const { points, standing } = form.shrink;
  note('shrink.standing', tooLong(standing, longest.standing));
  for (const [i, { plate, percent }] of points.entries()) {
    note(`shrink.${i}.plate`, temperatureError(plate, form));
    note(`shrink.${i}.percent`, rangeError(percent, shrunkPercent, scheduleWords.percent));
    const before = points[i - 1];
    if (before === undefined) continue;
    if (isOver(before.plate, plate, true))
      note(`shrink.${i}.plate`, scheduleWords.shrinkRises(shown(before.plate, form.unit)));
    if (isOver(before.percent, percent))
      note(`shrink.${i}.percent`, scheduleWords.shrinkFalls(scheduleWords.percent(before.percent.text)));
  }
}

function temperatureError(typed: Typed, form: ScheduleForm): string {
  if (typed.value === null) return fieldWords.notANumber(`°${form.unit}`);
  const highest = temperatureTyped(HIGHEST_C, form.unit);
  if (typed.value > HIGHEST_C || typed.value < ABSOLUTE_ZERO_C)
    return scheduleWords.tooHot(shown(highest, form.unit));
  return '';
}

function draftOf(form: ScheduleForm): unknown {
  const manual = form.manual.trim();
  return {
    name: form.name.trim(),
    fabric: form.fabric.trim(),
    stages: form.stages.map(stageDraftOf),
    fabricLimitC: form.fabricLimit.value,
    cementLimitC: isTyped(form.cementLimit) ? form.cementLimit.value : null,
    limitStanding: form.limitStanding.trim(),
    ...(form.shrink.points.length === 0 ? {} : { shrink: shrinkDraftOf(form.shrink) }),
    source: manual === '' ? null : { manual, page: form.page.trim() },
  };
}

const stageDraftOf = ({
  id,
  name,
  low,
  target,
  high,
  restLimit,
  standing,
}: StageForm): Readonly<Partial<Record<keyof HeatStage, unknown>>> => ({
  id,
  name: name.trim(),
  lowC: low.value,
  targetC: target.value,
  highC: high.value,
  ...(isTyped(restLimit) ? { restLimitS: restLimit.value } : {}),
  standing: standing.trim(),
});

const shrinkDraftOf = ({ points, standing }: ShrinkForm): unknown => ({
  points: points.map(({ plate, percent }) => ({ plateC: plate.value, percent: percent.value })),
  standing: standing.trim(),
});
