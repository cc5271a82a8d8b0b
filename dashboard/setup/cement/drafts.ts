import { z } from 'zod';
import {
  type Cement,
  type CementDraft,
  cementSchema,
  dryingStageSchema,
} from '../../../shared/cure/cement.ts';
import { cementWords } from '../../../shared/words/cements.ts';
import { cements, readCements } from '../../cure/cements.ts';
import { randomId } from '../../link/ids.ts';
import { versionedStore } from '../versioned/saving.ts';
import { checkForm } from './check.ts';
import { type CementForm, cementFormSchema, emptyForm, formInUnit, formOf, valuesOf } from './form.ts';
import { merge, type Place } from './merge.ts';

/** Cements that are being changed on this page. */

/** What a new cement begins from has no name and no stages yet. */
const baseSchema = cementSchema.safeExtend({
  version: z.number().int().min(0),
  name: z.string(),
  stages: z.array(dryingStageSchema).readonly(),
});

export const cementPath = (id: string): string => `/api/cements/${encodeURIComponent(id)}`;

export const cementStore = versionedStore<Cement, CementDraft, CementForm, Place>({
  keptAs: 'cements-typed',
  draftSchema: z.strictObject({ base: baseSchema, form: cementFormSchema }),
  schema: cementSchema,
  path: cementPath,
  all: cements,
  read: readCements,
  formOf,
  inUnit: formInUnit,
  check: checkForm,
  merge,
  saved: cementWords.saved,
});

const newId = (): string => `cement-${randomId().slice(0, 12)}`;

/** What a new cement begins from: no stages, so that its form is empty; nothing of it is shown or saved. */
const blank: Omit<Cement, 'id'> = {
  version: 0,
  madeAt: '1970-01-01T00:00:00Z',
  name: '',
  kind: 'water-borne',
  stages: [],
  atC: 0,
  atRhPct: 0,
  airLimits: { lowC: null, highC: null, lowRhPct: null, highRhPct: null },
  cementLimitC: null,
  energyKJPerMol: null,
  flammable: false,
  batch: '',
  expiresOn: null,
  source: null,
  standing: '',
  archived: false,
};

/** Begins a new cement in which nothing stands yet; returns its id. */
export function beginNew(): string {
  const id = newId();
  cementStore.begin({ ...blank, id });
  return id;
}

/** Begins a new cement with the values of another. Batch, day and document are for its own can. */
export function beginFrom(from: Cement): string {
  const id = newId();
  const name = cementWords.copyName(from.name).slice(0, 80);
  const own = { batch: '', expiresOn: null, source: null, archived: false };
  cementStore.begin({ ...from, ...own, id, version: 0, name });
  return id;
}

/** A new cement in which nothing was entered is gone once nobody looks at it. */
export function dropUntouched(id: string): void {
  const draft = cementStore.drafts.peek()[id];
  if (draft === undefined || draft.base.stages.length > 0) return;
  if (JSON.stringify(draft.form) === JSON.stringify(emptyForm(draft.form.unit))) cementStore.dropDraft(id);
}

/** Puts a cement away, or takes it out again: a version with nothing else changed. */
export const putAway = (cement: Cement, archived: boolean): Promise<boolean> =>
  cementStore.write(cement.id, { ...valuesOf(cement), archived }, cement.version);
