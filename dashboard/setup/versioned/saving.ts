import { signal } from '@preact/signals';
import { saveWords, setupWords } from '../../../shared/words/setup.ts';
import { put } from '../ask-daemon.ts';
import { type Drafts, keptDrafts } from './drafts.ts';
import type { Draft, Kind, Merge, UnitForm, Versioned } from './kind.ts';

/** Saving, each save a new version, and what came of it. */

const CONFLICT = 409;

function writing<T extends Versioned & V, V extends object, F extends UnitForm, P>(kind: Kind<T, V, F, P>) {
  /** What is said of each, by its id. */
  const said = signal<Readonly<Record<string, string>>>({});
  const isSaving = signal(false);

  const say = (id: string, sentence: string): void => {
    said.value = { ...said.peek(), [id]: sentence };
  };

  const newestOf = (id: string): T | undefined => kind.all.peek()?.find((one) => one.id === id);

  /** What was just made is shown at once, even where reading all of them again failed. */
  const take = (made: T): void => {
    const others = kind.all.peek() ?? [];
    const known = newestOf(made.id);
    if (known !== undefined && known.version >= made.version) return;
    kind.all.value =
      known === undefined ? [...others, made] : others.map((one) => (one.id === made.id ? made : one));
  };

  const isSame = (one: V, other: V): boolean => {
    const form = kind.formOf(one, 'C');
    return kind.merge(form, form, kind.formOf(other, 'C')).theirs.length === 0;
  };

  /** Makes a new version with these values; says what came of it. */
  const write = async (id: string, values: V, basedOn: number): Promise<boolean> => {
    isSaving.value = true;
    const answer = await put(kind.path(id), { ...values, basedOn }, kind.schema);
    if (answer.kind !== 'unreached') await kind.read();
    isSaving.value = false;
    if (answer.kind === 'done') {
      take(answer.value);
      say(id, kind.saved(answer.value.version));
      return true;
    }
    const newest = newestOf(id);
    // The answer to a first attempt may have been lost on the way: then the version is there already.
    const isConflict = answer.kind === 'refused' && answer.status === CONFLICT;
    if (isConflict && newest !== undefined && isSame(newest, values)) {
      say(id, kind.saved(newest.version));
      return true;
    }
    const more = answer.kind === 'unreached' ? ` ${setupWords.staysHere}` : '';
    say(id, setupWords.notSaved(`${answer.why}${more}`));
    return false;
  };

  return { said, say, isSaving, newestOf, write };
}

function savingDrafts<T extends Versioned & V, V extends object, F extends UnitForm, P>(
  kind: Kind<T, V, F, P>,
  { drafts, setDraft, dropDraft }: Drafts<T, V, F>,
  { say, newestOf, write }: ReturnType<typeof writing<T, V, F, P>>,
) {
  /** Those whose every wrong field is pointed out: somebody has tried to save them. */
  const triedToSave = signal<ReadonlySet<string>>(new Set());

  /** The newest version, where it is newer than the one that a draft was made from; else null. */
  const newerThan = ({ base }: Draft<T, F>): T | null => {
    const newest = kind.all.value?.find((one) => one.id === base.id) ?? null;
    return newest !== null && newest.version > base.version ? newest : null;
  };

  const mergeOf = ({ base, form }: Draft<T, F>, newest: T): Merge<F, P> =>
    kind.merge(kind.formOf(base, form.unit), form, kind.formOf(newest, form.unit));

  /** Saves what was typed. False where fields are wrong: each says so then. */
  const save = async (id: string): Promise<boolean> => {
    const draft = drafts.peek()[id];
    if (draft === undefined) return true;
    const { values, errors } = kind.check(draft.form);
    triedToSave.value = new Set([...triedToSave.peek(), id]);
    if (values === null) {
      say(id, errors.get('whole') ?? saveWords.wrongFields(errors.size));
      return false;
    }
    if (await write(id, values, draft.base.version)) {
      triedToSave.value = new Set([...triedToSave.peek()].filter((one) => one !== id));
      // What was typed meanwhile is a change of the version just made.
      const later = drafts.peek()[id];
      const made = newestOf(id);
      if (later === undefined || later === draft || made === undefined) dropDraft(id);
      else setDraft(id, { base: made, form: later.form });
    }
    return true;
  };

  /** Saves both people's changes on top of the newest version. */
  const saveBoth = (id: string): Promise<boolean> => {
    const draft = drafts.peek()[id];
    const newest = draft === undefined ? null : newerThan(draft);
    if (draft !== undefined && newest !== null)
      setDraft(id, { base: newest, form: mergeOf(draft, newest).form });
    return save(id);
  };

  return { triedToSave, newerThan, mergeOf, save, saveBoth };
}

/** Everything that a page needs to change one kind of versioned settings. */
export function versionedStore<T extends Versioned & V, V extends object, F extends UnitForm, P>(
  kind: Kind<T, V, F, P>,
) {
  const kept = keptDrafts(kind);
  const written = writing(kind);
  const type = (one: T, form: F): void => {
    if ((written.said.peek()[one.id] ?? '') !== '') written.say(one.id, '');
    kept.type(one, form);
  };
  return {
    ...kept,
    ...written,
    type,
    ...savingDrafts(kind, kept, written),
    check: kind.check,
    formOf: kind.formOf,
  };
}

export type Store<T extends Versioned & V, V extends object, F extends UnitForm, P> = ReturnType<
  typeof versionedStore<T, V, F, P>
>;
