import { dryingStageKinds } from '../../../shared/cure/cement.ts';
import { cementFactWords, cementKindWords, cementFormWords as words } from '../../../shared/words/cements.ts';
import { dryingStageWords } from '../../../shared/words/coats.ts';
import { conflictWords } from '../../../shared/words/setup.ts';
import { meaning, type Typed } from '../fields/number.ts';
import type { PlaceTexts } from '../versioned/conflict-note.tsx';
import type { Merge } from '../versioned/kind.ts';
import type { CementForm } from './form.ts';
import type { StageTime } from './times.ts';

/** Two people have changed one cement, each from the same version: what each changed, and both together. */

const fields = [
  'name',
  'kind',
  'at',
  'atRh',
  'low',
  'high',
  'lowRh',
  'highRh',
  'cementLimit',
  'energy',
  'burns',
  'batch',
  'expires',
  'manual',
  'page',
  'standing',
  'archived',
] as const satisfies readonly (keyof CementForm)[];
type PlainField = (typeof fields)[number];

/** A place in a form: one of its fields, or the time of a stage. */
export type Place = PlainField | (typeof dryingStageKinds)[number];
type Value = string | boolean | null | Typed | StageTime;

const places: readonly Place[] = [...fields, ...dryingStageKinds];

const isStage = (place: Place): place is (typeof dryingStageKinds)[number] =>
  dryingStageKinds.some((kind) => kind === place);

const valueAt = (form: CementForm, place: Place): Value => (isStage(place) ? form.times[place] : form[place]);

/** What makes two places alike. */
function meant(value: Value): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  return 'in' in value ? `${meaning(value.from)} ${meaning(value.to)}` : meaning(value);
}

/** Where two forms differ. */
export const differences = (before: CementForm, after: CementForm): readonly Place[] =>
  places.filter((place) => meant(valueAt(before, place)) !== meant(valueAt(after, place)));

/** A form with what another one has in one place. */
const taking = (form: CementForm, other: CementForm, place: Place): CementForm =>
  isStage(place)
    ? { ...form, times: { ...form.times, [place]: other.times[place] } }
    : { ...form, [place]: other[place] };

/** Puts my changes on top of their version; both were made from `base` and are in one unit. */
export function merge(base: CementForm, mine: CementForm, theirs: CementForm): Merge<CementForm, Place> {
  const my = differences(base, mine);
  const their = differences(base, theirs);
  const apart = differences(mine, theirs);
  return {
    form: my.reduce((form, place) => taking(form, mine, place), theirs),
    theirs: their.filter((place) => !my.includes(place)),
    both: their.filter((place) => my.includes(place) && apart.includes(place)),
  };
}

const nameOf = (place: Place): string => {
  if (isStage(place)) return dryingStageWords[place];
  if (place === 'energy') return words.energyName;
  return words[place];
};

const temperatures: readonly Place[] = ['at', 'low', 'high', 'cementLimit'];

/** What stands at a place, with its unit. */
function shown(form: CementForm, place: Place): string {
  if (place === 'kind') return form.kind === null ? conflictWords.nothing : cementKindWords[form.kind];
  const value = valueAt(form, place);
  if (value === null) return conflictWords.nothing;
  if (typeof value === 'boolean') return value ? words.yes : words.no;
  if (typeof value === 'string') return value === '' ? conflictWords.nothing : `“${value}”`;
  if ('in' in value) return shownTime(value);
  if (value.text.trim() === '') return conflictWords.nothing;
  if (temperatures.includes(place)) return `${value.text} °${form.unit}`;
  return place === 'energy' ? `${value.text} ${words.energySign}` : words.percent(value.text);
}

function shownTime({ from, to, in: unit }: StageTime): string {
  if (from.text === '' && to.text === '') return conflictWords.nothing;
  return to.text === ''
    ? cementFactWords.time(from.text, unit)
    : cementFactWords.range(from.text, to.text, unit);
}

/** How the places of a cement's form are told. */
export const placeTexts: PlaceTexts<CementForm, Place> = {
  key: (place) => place,
  name: nameOf,
  shown,
  taking,
};
