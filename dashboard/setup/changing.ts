import { signal } from '@preact/signals';
import { type Iron, type IronDraft, ironSchema } from '../../shared/iron/iron.ts';
import { type LineForm, protocolForm } from '../../shared/messages/line-form.ts';
import { deviceSettingsSchema } from '../../shared/messages/settings.ts';
import { type PlaceDraft, probePlaceSchema } from '../../shared/thermometer/place.ts';
import { type ProbeDraft, type ProbeSettings, probeSettingsSchema } from '../../shared/thermometer/probe.ts';
import { type UnattendedAfter, unattendedSchema } from '../../shared/watch/attended.ts';
import { setupWords } from '../../shared/words/setup.ts';
import { type Answered, postDone, put } from './ask-daemon.ts';
import { devicesSettled, irons, probes, readSettings } from './daemon-settings.ts';
import { draftOf, type Move } from './iron/moves.ts';

/** Changes of irons, probes and devices: each takes effect at once and can be undone. */

export interface Said {
  readonly sentence: string;
  /** Puts back what was before; null where there is nothing to put back. */
  readonly undo: (() => void) | null;
}

/** What is said of the last change, by the iron, probe or device that it was made at. */
export const saidOf = signal<Readonly<Record<string, Said>>>({});

const say = (subject: string, said: Said): void => {
  // Only the last change can be undone: an older one may build on what has changed since.
  saidOf.value = { [subject]: said };
};

/** Says what came of something, with the way back where there is one. */
export const sayOf = (subject: string, sentence: string, undo: Said['undo'] = null): void =>
  say(subject, { sentence, undo });

/** What was said is over once somebody goes on. */
export function unsay(subject: string): void {
  if (saidOf.peek()[subject] !== undefined) saidOf.value = {};
}

/** Carries a change out and says so, with the change that puts things back. */
async function carryOut(
  subject: string,
  change: () => Promise<Answered<unknown>>,
  words: string,
  back: (() => Promise<Answered<unknown>>) | null,
): Promise<boolean> {
  const answer = await change();
  if (answer.kind !== 'unreached') await readSettings();
  if (answer.kind !== 'done') {
    say(subject, { sentence: setupWords.notSaved(answer.why), undo: null });
    return false;
  }
  const undo = back === null ? null : () => void carryOut(subject, back, setupWords.undone, null);
  say(subject, { sentence: words, undo });
  return true;
}

const putIron = (id: string, draft: IronDraft) =>
  put(`/api/irons/${encodeURIComponent(id)}`, draft, ironSchema);

const putProbe = (id: string, draft: ProbeDraft) =>
  put(`/api/probes/${encodeURIComponent(id)}`, draft, probeSettingsSchema);

/** Changes something of an iron, on top of what it is at the moment of sending. */
export function changeIron(iron: Iron, change: Partial<IronDraft>, words: string): Promise<boolean> {
  const write = (wanted: Partial<IronDraft>) => async () => {
    await readSettings();
    const now = irons.peek()?.find((one) => one.id === iron.id) ?? iron;
    return putIron(iron.id, { ...draftOf(now), ...wanted });
  };
  return carryOut(`iron ${iron.id}`, write(change), words, write(pickAs(change, iron)));
}

export function changeProbe(
  probe: ProbeSettings,
  change: Partial<ProbeDraft>,
  words: string,
): Promise<boolean> {
  const write = (wanted: Partial<ProbeDraft>) => async () => {
    await readSettings();
    const { id: _id, ...now } = probes.peek()?.find((one) => one.id === probe.id) ?? probe;
    return putProbe(probe.id, { ...now, ...wanted });
  };
  return carryOut(`probe ${probe.id}`, write(change), words, write(pickAs(change, probe)));
}

/** What `before` has in place of what is changed. */
function pickAs<T extends object>(change: Partial<T>, before: Partial<T>): Partial<T> {
  const names = Object.keys(change) as (keyof T)[];
  return Object.fromEntries(names.map((name) => [name, before[name]])) as Partial<T>;
}

export const moveProbe = (probe: string, { to, back }: Move, words: string): Promise<boolean> =>
  carryOut(
    `probe ${probe}`,
    () => putIron(to.id, to.draft),
    words,
    () => putIron(back.id, back.draft),
  );

export const addIron = (subject: string, id: string, draft: IronDraft, words: string): Promise<boolean> =>
  carryOut(subject, () => putIron(id, draft), words, removal(id));

/** Only an iron without a probe can be taken away. What is known of its dial and its plate stays for when it comes back. */
export const removeIron = (subject: string, iron: Iron, words: string): Promise<boolean> =>
  carryOut(subject, removal(iron.id), words, () => putIron(iron.id, draftOf(iron)));

const removal = (id: string) => () => postDone(`/api/irons/${encodeURIComponent(id)}/removal`);

export const tellPlace = (probe: string, place: PlaceDraft, words: string): Promise<boolean> =>
  carryOut(
    `probe ${probe}`,
    () => put(`/api/probes/${encodeURIComponent(probe)}/place`, place, probePlaceSchema),
    words,
    null,
  );

export function nameDevice(id: string, name: string, words: string): Promise<boolean> {
  const before = settledOf(id)?.name ?? '';
  const write = (text: string) => () =>
    put(`/api/devices/${encodeURIComponent(id)}`, { name: text }, deviceSettingsSchema);
  return carryOut(`device ${id}`, write(name), words, write(before));
}

const putUnattended = (wanted: UnattendedAfter) => () => put('/api/unattended', wanted, unattendedSchema);

export function changeUnattended(
  before: UnattendedAfter,
  change: Partial<UnattendedAfter>,
  words: string,
): Promise<boolean> {
  return carryOut('unattended', putUnattended({ ...before, ...change }), words, putUnattended(before));
}

const settledOf = (id: string) => devicesSettled.peek()?.find((one) => one.id === id);

export function readLinesAs(id: string, form: LineForm, words: string): Promise<boolean> {
  const before = settledOf(id)?.form ?? protocolForm;
  const write = (wanted: LineForm) => () =>
    put(`/api/devices/${encodeURIComponent(id)}/form`, wanted, deviceSettingsSchema);
  return carryOut(`lines ${id}`, write(form), words, write(before));
}
