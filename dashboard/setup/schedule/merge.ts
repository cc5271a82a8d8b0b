import { type Typed, meaning as typedMeaning } from '../fields/number.ts';
import type { Merge } from '../versioned/kind.ts';
import type { ScheduleForm, StageForm } from './form.ts';
import { type ShrinkForm, shrinkText } from './shrink-form.ts';

/** Two people have changed one schedule, each from the same version: what each changed, and both together. */

type Plain =
  | 'name'
  | 'fabric'
  | 'fabricLimit'
  | 'cementLimit'
  | 'limitStanding'
  | 'shrink'
  | 'manual'
  | 'page';
export type StageField = 'name' | 'low' | 'target' | 'high' | 'restLimit' | 'standing';
type Value = string | Typed | ShrinkForm;

const plain: readonly Plain[] = [
  'name',
  'fabric',
  'fabricLimit',
  'cementLimit',
  'limitStanding',
  'shrink',
  'manual',
  'page',
];
const stageFields: readonly StageField[] = ['name', 'low', 'target', 'high', 'restLimit', 'standing'];

/** A place in a form: one of its fields, the list of its stages, or a field of one stage. */
export type Place =
  | { readonly field: Plain | 'stages' }
  | { readonly stage: string; readonly field: StageField };

export const placeKey = (place: Place): string =>
  'stage' in place ? `${place.stage}.${place.field}` : place.field;

const idsOf = (form: ScheduleForm): readonly string[] => form.stages.map((stage) => stage.id);

const stageOf = (form: ScheduleForm, id: string): StageForm | undefined =>
  form.stages.find((stage) => stage.id === id);

/** What makes two fields alike: the value behind a text; the text itself only where there is none. */
function meaning(value: Value): string {
  if (typeof value === 'string') return value;
  if ('points' in value) {
    const figures = value.points.flatMap(({ plate, percent }) => [meaning(plate), meaning(percent)]);
    return JSON.stringify([...figures, value.standing]);
  }
  return typedMeaning(value);
}

const alike = (a: Value, b: Value): boolean => meaning(a) === meaning(b);

/** Where two forms differ. A stage that only one of them has counts as a difference of the list. */
export function differences(before: ScheduleForm, after: ScheduleForm): readonly Place[] {
  const fields: Place[] = plain
    .filter((field) => !alike(before[field], after[field]))
    .map((field) => ({ field }));
  const list: Place[] = idsOf(before).join() === idsOf(after).join() ? [] : [{ field: 'stages' }];
  const stages = before.stages.flatMap((stage): Place[] => {
    const other = stageOf(after, stage.id);
    if (other === undefined) return [];
    return stageFields
      .filter((field) => !alike(stage[field], other[field]))
      .map((field) => ({ stage: stage.id, field }));
  });
  return [...fields, ...list, ...stages];
}

/** Puts my changes on top of their version; both were made from `base`. */
export function merge(
  base: ScheduleForm,
  mine: ScheduleForm,
  theirs: ScheduleForm,
): Merge<ScheduleForm, Place> {
  const mineChanged = new Set(differences(base, mine).map(placeKey));
  const theirPlaces = differences(base, theirs);
  const different = new Set(differences(mine, theirs).map(placeKey));
  const form: ScheduleForm = {
    ...theirs,
    ...Object.fromEntries(
      plain.filter((field) => mineChanged.has(field)).map((field) => [field, mine[field]]),
    ),
    unit: mine.unit,
    stages: mergedStages(base, mine, theirs, mineChanged),
  };
  return {
    form,
    theirs: theirPlaces.filter((place) => !mineChanged.has(placeKey(place))),
    both: theirPlaces.filter((place) => mineChanged.has(placeKey(place)) && different.has(placeKey(place))),
  };
}

/** In my order where I changed the list, else in theirs. A stage that either of us added, or that I changed, stays. */
function mergedStages(
  base: ScheduleForm,
  mine: ScheduleForm,
  theirs: ScheduleForm,
  mineChanged: ReadonlySet<string>,
): readonly StageForm[] {
  const [first, second] = mineChanged.has('stages') ? [mine, theirs] : [theirs, mine];
  const ids = [...new Set([...idsOf(first), ...idsOf(second)])];
  return ids.flatMap((id) => {
    const my = stageOf(mine, id);
    const their = stageOf(theirs, id);
    const known = stageOf(base, id) !== undefined;
    const iChanged = stageFields.some((field) => mineChanged.has(`${id}.${field}`));
    if (my === undefined) return known || their === undefined ? [] : [their];
    if (their === undefined) return known && !iChanged ? [] : [my];
    return [withMine(their, my, id, mineChanged)];
  });
}

const withMine = (
  their: StageForm,
  my: StageForm,
  id: string,
  mineChanged: ReadonlySet<string>,
): StageForm => ({
  ...their,
  ...Object.fromEntries(
    stageFields.filter((field) => mineChanged.has(`${id}.${field}`)).map((field) => [field, my[field]]),
  ),
});

/** My form with what they have in one place. */
export function taking(mine: ScheduleForm, theirs: ScheduleForm, place: Place): ScheduleForm {
  if ('stage' in place) {
    const their = stageOf(theirs, place.stage);
    if (their === undefined) return mine;
    const stages = mine.stages.map((stage) =>
      stage.id === place.stage ? { ...stage, [place.field]: their[place.field] } : stage,
    );
    return { ...mine, stages };
  }
  if (place.field !== 'stages') return { ...mine, [place.field]: theirs[place.field] };
  return { ...mine, stages: theirs.stages.map((stage) => stageOf(mine, stage.id) ?? stage) };
}

/** What stands at a place, as text; empty where nothing does. */
export function textAt(form: ScheduleForm, place: Place): string {
  if ('stage' in place) {
    const value = stageOf(form, place.stage)?.[place.field] ?? '';
    return typeof value === 'string' ? value : value.text;
  }
  if (place.field === 'stages') return form.stages.map((stage) => stage.name).join(', ');
  if (place.field === 'shrink') return shrinkText(form.shrink, form.unit);
  const value = form[place.field];
  return typeof value === 'string' ? value : value.text;
}
