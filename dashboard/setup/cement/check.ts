import {
  type CementDraft,
  cementDraftSchema,
  cementEnergyKJPerMol,
  type DryingStageKind,
  dryingStageKinds,
  LEAST_RH_PCT_MOISTURE,
  LONGEST_DRYING_S,
  cementTextLengths as longest,
  MOST_RH_PCT_WATER,
} from '../../../shared/cure/cement.ts';
import { cementWords, cementFormWords as words } from '../../../shared/words/cements.ts';
import { dryingStageWords } from '../../../shared/words/coats.ts';
import {
  airBounds,
  type Bounds,
  isOver,
  nameError,
  parsedDraft,
  percentBounds,
  rangeError,
  shown,
  sourceError,
  temperatureError,
  tooLong,
} from '../fields/checks.ts';
import { isTyped, type Typed } from '../fields/number.ts';
import type { Checked } from '../versioned/kind.ts';
import { burnsByKind, type CementForm, draftOf, readDay } from './form.ts';
import { dryingTimeText, isGiven, lastOf, longestIn, type StageTime } from './times.ts';

/** Whether a cement's form can be saved, or what is wrong, as a sentence beside each field. */

type Note = (key: string, error: string) => void;

/** What a plate can be; a limit under 0 degC would be none, degC. */
const plateC: Bounds = { least: 0, most: 400 };

export function checkForm(form: CementForm): Checked<CementDraft> {
  const errors = new Map<string, string>();
  const note: Note = (key, error) => {
    if (error !== '' && !errors.has(key)) errors.set(key, error);
  };
  checkTexts(form, note);
  checkTimes(form, note);
  checkAir(form, note);
  if (isTyped(form.cementLimit)) note('cementLimit', temperatureError(form.cementLimit, form.unit, plateC));
  if (form.kind !== 'water-borne' && isTyped(form.energy))
    note(
      'energy',
      rangeError(form.energy, cementEnergyKJPerMol, (text) => `${text} ${words.energySign}`),
    );
  if (errors.size > 0) return { values: null, errors };
  return parsedDraft(cementDraftSchema, draftOf(form), cementWords.whole);
}

function checkTexts(form: CementForm, note: Note): void {
  const { name, kind, burns, batch, expires, manual, page, standing } = form;
  note('name', nameError(name, longest.name));
  if (kind === null) note('kind', words.kindMissing);
  else if (burnsByKind(kind) === null && burns === null) note('burns', words.burnsMissing);
  note('batch', tooLong(batch, longest.batch));
  if (expires.trim() !== '' && readDay(expires) === null) note('expires', words.expiresWrong);
  note('manual', sourceError(manual, page, { most: longest.manual, missing: words.manualMissing }));
  note('page', sourceError(page, manual, { most: longest.page, missing: words.pageMissing }));
  note('standing', tooLong(standing, longest.standing));
}

/** The key of a stage's first or second time. */
export const timeKey = (kind: DryingStageKind, end: 'from' | 'to'): string => `${kind}.${end}`;

function checkTimes({ times }: CementForm, note: Note): void {
  const given = dryingStageKinds.filter((kind) => isGiven(times[kind]));
  if (given.length === 0) note(timeKey(dryingStageKinds[0], 'from'), words.noTimes);
  for (const [i, kind] of given.entries()) {
    const time = times[kind];
    note(timeKey(kind, 'from'), isTyped(time.from) ? timeError(time.from, time) : words.fromMissing);
    if (isTyped(time.to)) note(timeKey(kind, 'to'), timeError(time.to, time));
    if (isOver(time.from, lastOf(time))) note(timeKey(kind, 'to'), words.toShorter);
    const before = given[i - 1];
    if (before !== undefined) note(timeKey(kind, 'from'), orderError(before, times[before], time));
  }
}

const timeError = ({ value }: Typed, time: StageTime): string =>
  value === null || value < 1 || value > LONGEST_DRYING_S ? words.time(longestIn(time.in)) : '';

/** A later stage comes later, at both ends of its range. */
function orderError(kind: DryingStageKind, before: StageTime, time: StageTime): string {
  const [fromS, toS] = [before.from.value, lastOf(before).value];
  const isEarly = isOver(before.from, time.from) || isOver(lastOf(before), lastOf(time));
  if (!isEarly || fromS === null || toS === null) return '';
  return words.early(dryingStageWords[kind], dryingTimeText({ fromS, toS }));
}

function checkAir(form: CementForm, note: Note): void {
  const { kind, at, atRh, low, high, lowRh, highRh } = form;
  note('at', temperatureError(at, form.unit, airBounds));
  note('atRh', rangeError(atRh, percentBounds, words.percent));
  if (atRh.value !== null && atRh.value > MOST_RH_PCT_WATER && kind === 'water-borne')
    note('atRh', words.saturated(MOST_RH_PCT_WATER));
  if (atRh.value !== null && atRh.value < LEAST_RH_PCT_MOISTURE && kind === 'moisture-curing')
    note('atRh', words.dryAir(LEAST_RH_PCT_MOISTURE));
  for (const [key, typed] of [
    ['low', low],
    ['high', high],
  ] as const)
    if (isTyped(typed)) note(key, temperatureError(typed, form.unit, airBounds));
  for (const [key, typed] of [
    ['lowRh', lowRh],
    ['highRh', highRh],
  ] as const)
    if (isTyped(typed)) note(key, rangeError(typed, percentBounds, words.percent));
  if (isOver(low, high, true)) note('low', words.lowOverHigh(shown(high, form.unit)));
  if (isOver(lowRh, highRh, true)) note('lowRh', words.lowOverHigh(words.percent(highRh.text.trim())));
}
