import { effect, signal } from '@preact/signals';
import { z } from 'zod';
import { type Piece, pieceSchema } from '../../../shared/piece/piece.ts';
import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { setupWords } from '../../../shared/words/setup.ts';
import { randomId } from '../../link/ids.ts';
import { tabKeep } from '../../parts/browser.ts';
import { readKept } from '../../parts/keep.ts';
import { put } from '../../setup/ask-daemon.ts';
import { pieceOf, putPiece, readPieces } from '../pieces.ts';
import { draftOf, errorsOf, formOf, isRight, type PieceForm, pieceFormSchema, startingForm } from './form.ts';

/** Pieces that are being changed on this page. They outlive a change of view, and a reload of the page. */

const NAME = 'pieces-typed';
/** The one that is made new. */
export const NEW = 'new';

const kept = (): Readonly<Record<string, PieceForm>> =>
  readKept(tabKeep.read(NAME), z.record(z.string(), pieceFormSchema)) ?? {};

/** By the piece's id, or `NEW`. */
export const drafts = signal<Readonly<Record<string, PieceForm>>>(kept());
effect(() => void tabKeep.write(NAME, JSON.stringify(drafts.value)));

/** What came of the last attempt to save, and whether one is under way. */
export const said = signal('');
export const isSaving = signal(false);
/** Whether a save was tried with something wrong: then what is wrong is shown beside every field. */
export const isTried = signal(false);

/** The maps before each change, the last one at the end. */
export const past = signal<readonly PieceForm[]>([]);
const MOST_PAST = 30;

/** What stands in the fields: what was changed, else the piece as it is, else a new one. Null: no such piece. */
export function formNow(key: string): PieceForm | null {
  const changed = drafts.value[key];
  if (changed !== undefined) return changed;
  if (key === NEW) return fresh;
  const piece = pieceOf(key);
  return piece === null ? null : formOf(piece);
}

let fresh = startingForm();

export function setForm(key: string, form: PieceForm): void {
  said.value = '';
  drafts.value = { ...drafts.peek(), [key]: form };
}

/** Changes the map, so that it can be taken back. */
export function changeMap(key: string, before: PieceForm, after: PieceForm): void {
  past.value = [...past.peek(), before].slice(-MOST_PAST);
  setForm(key, after);
}

export function undoMap(key: string): void {
  const before = past.peek().at(-1);
  const now = formNow(key);
  if (before === undefined || now === null) return;
  past.value = past.peek().slice(0, -1);
  setForm(key, { ...now, map: before.map, sides: before.sides });
}

export function dropForm(key: string): void {
  const { [key]: _dropped, ...others } = drafts.peek();
  drafts.value = others;
  begin();
  if (key === NEW) fresh = startingForm();
}

/** Nothing was said or tried yet of what is looked at now. */
export function begin(): void {
  said.value = '';
  isTried.value = false;
  past.value = [];
}

/** The newer version that somebody else has made since this form was begun; null: there is none. */
export function newerThan({ id, basedOn }: PieceForm): Piece | null {
  const newest = pieceOf(id);
  return newest !== null && newest.version > basedOn ? newest : null;
}

/** Saves what stands in the fields; true once the daemon has it. What could not be saved stays. */
export async function save(key: string, form: PieceForm): Promise<boolean> {
  if (!isRight(errorsOf(form))) {
    isTried.value = true;
    said.value = words.wrongFields;
    return false;
  }
  isSaving.value = true;
  const answer = await put(
    `/api/pieces/${encodeURIComponent(form.id)}`,
    { ...draftOf(form), basedOn: form.basedOn },
    pieceSchema,
  );
  isSaving.value = false;
  if (answer.kind === 'done') {
    putPiece(answer.value);
    dropForm(key);
    return true;
  }
  // Somebody else was quicker: their version is shown beside this one.
  if (answer.kind === 'refused' && answer.status === CONFLICT) readPieces();
  const stays = answer.kind === 'unreached' ? ` ${setupWords.staysHere}` : '';
  said.value = `${setupWords.notSaved(answer.why)}${stays}`;
  return false;
}

const CONFLICT = 409;

/** As a piece of its own, beside the one that it was begun from. */
export const apart = (form: PieceForm): PieceForm => ({
  ...form,
  id: randomId(),
  basedOn: 0,
  name: words.copyName(form.name).slice(0, 60),
});
