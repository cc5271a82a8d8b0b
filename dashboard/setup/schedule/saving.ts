import { signal } from '@preact/signals';
import { type HeatSchedule, heatScheduleSchema } from '../../../shared/heat/schedule.ts';
import { scheduleVersionsSchema } from '../../../shared/messages/settings.ts';
import { scheduleWords, setupWords } from '../../../shared/words/setup.ts';
import { randomId } from '../../link/ids.ts';
import { unit } from '../../parts/unit.ts';
import { get, put } from '../ask-daemon.ts';
import { readSettings, schedules } from '../daemon-settings.ts';
import { checkForm } from './check.ts';
import { type Draft, drafts, dropDraft, setDraft } from './drafts.ts';
import { formInUnit, formOf, type ScheduleValues, valuesOf } from './form.ts';
import { differences, type Merge, merge } from './merge.ts';

/** Saving schedules, each save a new version, and what came of it. */

/** What is said of a schedule, by its id. */
export const said = signal<Readonly<Record<string, string>>>({});
/** Schedules whose every wrong field is pointed out: somebody has tried to save them. */
export const triedToSave = signal<ReadonlySet<string>>(new Set());
export const isSaving = signal(false);

const path = (id: string): string => `/api/schedules/${encodeURIComponent(id)}`;

export const say = (id: string, sentence: string): void => {
  said.value = { ...said.peek(), [id]: sentence };
};

/** The newest version, where it is newer than the one that a draft was made from; else null. */
export function newerThan(draft: Draft): HeatSchedule | null {
  const newest = schedules.value?.find((one) => one.id === draft.base.id) ?? null;
  return newest !== null && newest.version > draft.base.version ? newest : null;
}

export function mergeOf(draft: Draft, newest: HeatSchedule): Merge {
  const of = (schedule: HeatSchedule) => formOf(schedule, draft.form.unit);
  return merge(of(draft.base), draft.form, of(newest));
}

/** Saves what was typed. False where fields are wrong: each says so then. */
export async function save(id: string): Promise<boolean> {
  const draft = drafts.peek()[id];
  if (draft === undefined) return true;
  const { values, errors } = checkForm(draft.form);
  triedToSave.value = new Set([...triedToSave.peek(), id]);
  if (values === null) {
    say(id, errors.get('whole') ?? scheduleWords.wrongFields(errors.size));
    return false;
  }
  if (await write(id, values, draft.base.version)) {
    triedToSave.value = new Set([...triedToSave.peek()].filter((one) => one !== id));
    // What was typed meanwhile is a change of the version just made.
    const later = drafts.peek()[id];
    const made = schedules.peek()?.find((one) => one.id === id);
    if (later === draft || made === undefined) dropDraft(id);
    else setDraft(id, { base: made, form: later?.form ?? formOf(made, unit.peek()) });
  }
  return true;
}

/** Saves both people's changes on top of the newest version. */
export function saveBoth(id: string): Promise<boolean> {
  const draft = drafts.peek()[id];
  const newest = draft === undefined ? null : newerThan(draft);
  if (draft !== undefined && newest !== null)
    setDraft(id, { base: newest, form: mergeOf(draft, newest).form });
  return save(id);
}

/** Makes a new version with the values of an older one. */
export const putBack = (newest: HeatSchedule, older: HeatSchedule): Promise<boolean> =>
  write(newest.id, valuesOf(older), newest.version);

async function write(id: string, values: ScheduleValues, basedOn: number): Promise<boolean> {
  isSaving.value = true;
  const answer = await put(path(id), { ...values, basedOn }, heatScheduleSchema);
  if (answer.kind !== 'unreached') await readSettings();
  isSaving.value = false;
  if (answer.kind === 'done') {
    take(answer.value);
    say(id, scheduleWords.saved(answer.value.version));
    return true;
  }
  const newest = schedules.peek()?.find((one) => one.id === id);
  // The answer to a first attempt may have been lost on the way: then the version is there already.
  if (answer.kind === 'refused' && answer.status === 409 && newest !== undefined && isSame(newest, values)) {
    say(id, scheduleWords.saved(newest.version));
    return true;
  }
  const more = answer.kind === 'unreached' ? ` ${setupWords.staysHere}` : '';
  say(id, setupWords.notSaved(`${answer.why}${more}`));
  return false;
}

/** What was just made is shown at once, even where reading the settings again failed. */
function take(made: HeatSchedule): void {
  const others = schedules.peek() ?? [];
  const known = others.find((one) => one.id === made.id);
  if (known !== undefined && known.version >= made.version) return;
  schedules.value =
    known === undefined ? [...others, made] : others.map((one) => (one.id === made.id ? made : one));
}

const isSame = (schedule: HeatSchedule, values: ScheduleValues): boolean =>
  differences(formOf(schedule, 'C'), formOf(values, 'C')).length === 0;

/** Begins a new schedule with the values of one that exists. It has no source: that is for its own manual. */
export function beginNew(from: HeatSchedule): string {
  const id = `schedule-${randomId().slice(0, 12)}`;
  const name = scheduleWords.newName(from.name).slice(0, 80);
  const base: HeatSchedule = { ...from, id, version: 0, name, source: null };
  setDraft(id, { base, form: formOf(base, unit.peek()) });
  return id;
}

/** Takes up again what was dropped. */
export function takeUp(id: string, draft: Draft): void {
  setDraft(id, { ...draft, form: formInUnit(draft.form, unit.peek()) });
  say(id, '');
}

/** Every version of a schedule, the newest first; null where they can't be read. */
export async function versionsOf(id: string): Promise<readonly HeatSchedule[] | null> {
  const answer = await get(`${path(id)}/versions`, scheduleVersionsSchema);
  return answer.kind === 'done' ? answer.value.versions : null;
}
