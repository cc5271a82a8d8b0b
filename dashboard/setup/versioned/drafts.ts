import { computed, effect, signal } from '@preact/signals';
import { z } from 'zod';
import { tabKeep } from '../../parts/browser.ts';
import { readKept } from '../../parts/keep.ts';
import { unit } from '../../parts/unit.ts';
import type { Draft, Kind, UnitForm, Versioned } from './kind.ts';

/** What is being changed on this page. It outlives a change of view, and a reload of the page. */

export type Drafts<T extends Versioned & V, V extends object, F extends UnitForm> = ReturnType<
  typeof keptDrafts<T, V, F, unknown>
>;

const readDrafts = <D>(keptAs: string, schema: z.ZodType<D>): Readonly<Record<string, D>> =>
  readKept(tabKeep.read(keptAs), z.record(z.string(), schema)) ?? {};

export function keptDrafts<T extends Versioned & V, V extends object, F extends UnitForm, P>({
  keptAs,
  draftSchema,
  all,
  formOf,
  inUnit,
}: Kind<T, V, F, P>) {
  /** By the setting's id. */
  const drafts = signal(readDrafts(keptAs, draftSchema));

  effect(() => {
    const shown = unit.value;
    const typed = Object.entries(drafts.value);
    if (typed.some(([, draft]) => draft.form.unit !== shown))
      drafts.value = Object.fromEntries(
        typed.map(([id, { base, form }]) => [id, { base, form: inUnit(form, shown) }]),
      );
    else tabKeep.write(keptAs, JSON.stringify(drafts.value));
  });

  const dropDraft = (id: string): void => {
    const { [id]: _dropped, ...others } = drafts.peek();
    drafts.value = others;
  };

  const setDraft = (id: string, draft: Draft<T, F>): void => {
    // Compared letter by letter: "250," on the way to "250,5" already means the same as 250.
    const before = JSON.stringify(formOf(draft.base, draft.form.unit));
    if (draft.base.version > 0 && before === JSON.stringify(draft.form)) dropDraft(id);
    else drafts.value = { ...drafts.peek(), [id]: draft };
  };

  return {
    drafts,
    isUnsaved: computed(() => Object.keys(drafts.value).length > 0),
    dropDraft,
    /** What is the same as its version again, and nothing new, is no draft any more. */
    setDraft,
    /** What stands in the fields: what is typed, else what the newest version has. */
    formNow: (one: T): F => drafts.value[one.id]?.form ?? formOf(one, unit.value),
    /** Takes what was typed. */
    type: (one: T, form: F): void => setDraft(one.id, { base: drafts.peek()[one.id]?.base ?? one, form }),
    /** Begins something new, with the values of `base`, whose version is 0. */
    begin: (base: T): void => setDraft(base.id, { base, form: formOf(base, unit.peek()) }),
    /** Takes up again what was dropped. */
    takeUp: (id: string, { base, form }: Draft<T, F>): void =>
      setDraft(id, { base, form: inUnit(form, unit.peek()) }),
    /** Those that exist, and after them those that are only typed yet. */
    list: (): readonly T[] => {
      const there = all.value ?? [];
      const begun = Object.values(drafts.value).map(({ base }) => base);
      return [...there, ...begun.filter(({ id }) => !there.some((one) => one.id === id))];
    },
  };
}
