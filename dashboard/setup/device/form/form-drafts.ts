import { effect, signal } from '@preact/signals';
import { z } from 'zod';
import {
  columnKeys,
  type LineForm,
  type Separator,
  separators,
} from '../../../../shared/messages/line-form.ts';
import { tabKeep } from '../../../parts/browser.ts';
import { readKept } from '../../../parts/keep.ts';

/** Forms of lines that are being set up on this page. They outlive a change of view, and a reload of the page. */

const columnSchema = z.strictObject({
  is: z.enum([...columnKeys, 'ignored']),
  /** As it was typed. */
  probe: z.string(),
});
const draftSchema = z.strictObject({
  kind: z.enum(['protocol', 'columns', 'pattern']).nullable(),
  /** Null until one was chosen: until then it is the likely one. */
  separator: z.enum(separators).nullable(),
  /** By separator, so that trying another one loses nothing. */
  columns: z.partialRecord(z.enum(separators), z.array(columnSchema).readonly()),
  pattern: z.string(),
});

export type FormDraft = z.infer<typeof draftSchema>;
export type DraftColumn = z.infer<typeof columnSchema>;

const NAME = 'line-forms-typed';

const kept = (): Readonly<Record<string, FormDraft>> =>
  readKept(tabKeep.read(NAME), z.record(z.string(), draftSchema)) ?? {};

/** By the device's id. */
export const formDrafts = signal<Readonly<Record<string, FormDraft>>>(kept());

effect(() => {
  tabKeep.write(NAME, JSON.stringify(formDrafts.value));
});

/** What was dropped, until it is taken back or another one is begun, by the device's id. */
export const droppedForms = signal<Readonly<Record<string, FormDraft>>>({});

export const setFormDraft = (id: string, draft: FormDraft): void => {
  droppedForms.value = without(droppedForms.peek(), id);
  formDrafts.value = { ...formDrafts.peek(), [id]: draft };
};

/** Drops what was set up. It can be taken back for as long as the page is open. */
export function dropFormDraft(id: string): void {
  const draft = formDrafts.peek()[id];
  endFormDraft(id);
  if (draft !== undefined) droppedForms.value = { ...droppedForms.peek(), [id]: draft };
}

/** It is in use: there is nothing left to set up. */
export function endFormDraft(id: string): void {
  formDrafts.value = without(formDrafts.peek(), id);
}

function without<T>(all: Readonly<Record<string, T>>, id: string): Readonly<Record<string, T>> {
  const { [id]: _gone, ...others } = all;
  return others;
}

/** Begins with the form in use; where that is our own protocol, with none. */
export function draftOf(form: LineForm): FormDraft {
  const empty: FormDraft = { kind: null, separator: null, columns: {}, pattern: '' };
  switch (form.kind) {
    case 'protocol':
      return empty;
    case 'columns':
      return {
        ...empty,
        kind: 'columns',
        separator: form.separator,
        columns: { [form.separator]: form.columns },
      };
    case 'pattern':
      return { ...empty, kind: 'pattern', pattern: form.pattern };
  }
}

export const ignored: DraftColumn = { is: 'ignored', probe: '1' };

/** The columns as they are named so far; none named yet, they are as many as the newest line has. */
export function columnsOf(
  { columns }: FormDraft,
  separator: Separator,
  cells: readonly string[],
): readonly DraftColumn[] {
  const named = columns[separator] ?? [];
  return named.some(({ is }) => is !== 'ignored') ? named : cells.map((_, i) => named[i] ?? ignored);
}

/** What the draft means, given the separator that the lines seem to have and their cells. */
export function formOf(draft: FormDraft, likely: Separator | null, cells: readonly string[]): LineForm {
  switch (draft.kind) {
    case 'columns': {
      const separator = separatorOf(draft, likely);
      return { kind: 'columns', separator, columns: columnsOf(draft, separator, cells) };
    }
    case 'pattern':
      return { kind: 'pattern', pattern: draft.pattern };
    case 'protocol':
    case null:
      return { kind: 'protocol' };
  }
}

export const separatorOf = ({ separator }: FormDraft, likely: Separator | null): Separator =>
  separator ?? likely ?? 'semicolon';
