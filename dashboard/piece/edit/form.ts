import { z } from 'zod';
import {
  areaSchema,
  type Piece,
  type PieceDraft,
  pieceDraftSchema,
  sideIds,
} from '../../../shared/piece/piece.ts';
import { idFor, startingPiece } from '../../../shared/piece/starting.ts';
import { hands, pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { randomId } from '../../link/ids.ts';
import { nameCheck } from '../../setup/fields/kept-field.tsx';
import { readNumber, writeNumber } from '../../setup/fields/number.ts';

/** A piece as it is being written: texts as they stand in the fields, and the map. */

export const pieceFormSchema = z.strictObject({
  id: z.string(),
  /** The version that it was made from; 0: a new piece. */
  basedOn: z.number().int().min(0),
  name: z.string(),
  frame: z.string(),
  sides: z.array(z.string()).readonly(),
  length: z.string(),
  width: z.string(),
  map: pieceDraftSchema.pick({ rows: true, columns: true }).extend({ areas: z.array(areaSchema).readonly() }),
  archived: z.boolean(),
});
export type PieceForm = z.infer<typeof pieceFormSchema>;

const MOST_TEXT = 60;

const sizeText = (cm: number | null): string => (cm === null ? '' : writeNumber(cm));

const formFrom = (draft: PieceDraft, id: string, basedOn: number): PieceForm => ({
  id,
  basedOn,
  name: draft.name,
  frame: draft.frame,
  sides: draft.sides,
  length: sizeText(draft.lengthCm),
  width: sizeText(draft.widthCm),
  map: { rows: draft.rows, columns: draft.columns, areas: draft.areas },
  archived: draft.archived,
});

export const formOf = (piece: Piece): PieceForm => formFrom(piece, piece.id, piece.version);

/** A new piece like this one. */
export const newForm = (draft: PieceDraft): PieceForm =>
  formFrom({ ...draft, archived: false }, randomId(), 0);

export const startingForm = (): PieceForm => newForm(startingPiece('', '', words.sideNames));

/** A length as it is typed, in cm or, with "in" behind it, in inches. Null: none was typed; NaN: it is none. */
export function readSizeCm(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  const inches = /^(.*?)\s*(?:in|inch|inches|"|″)$/i.exec(trimmed)?.[1];
  const number = readNumber(inches ?? trimmed.replace(/\s*cm$/i, ''));
  const cm = number === null ? Number.NaN : number * (inches === undefined ? 1 : CM_PER_INCH);
  return cm >= LEAST_CM && cm <= MOST_CM ? cm : Number.NaN;
}

const CM_PER_INCH = 2.54;
const LEAST_CM = 1;
const MOST_CM = 2000;

const nameError = nameCheck(MOST_TEXT);
const sizeError = (text: string): string => (Number.isNaN(readSizeCm(text)) ? words.sizeWrong : '');

/** What is wrong in each field; empty texts where nothing is. */
export interface FormErrors {
  readonly name: string;
  readonly frame: string;
  readonly sides: readonly string[];
  readonly length: string;
  readonly width: string;
}

export const errorsOf = (form: PieceForm): FormErrors => ({
  name: nameError(form.name),
  frame: nameCheck(MOST_TEXT, true)(form.frame),
  sides: form.sides.map(nameError),
  length: sizeError(form.length),
  width: sizeError(form.width),
});

export const isRight = ({ sides, ...texts }: FormErrors): boolean =>
  [...sides, ...Object.values(texts)].every((error) => error === '');

/** The piece as it would be saved. Where a text is wrong, it stands as it is: what is asked of the map holds all the same. */
export const draftOf = (form: PieceForm): PieceDraft => ({
  name: form.name.trim(),
  frame: form.frame.trim(),
  sides: form.sides.map((side) => side.trim()),
  ...form.map,
  lengthCm: known(readSizeCm(form.length)),
  widthCm: known(readSizeCm(form.width)),
  archived: form.archived,
});

const known = (cm: number | null): number | null => (cm === null || Number.isNaN(cm) ? null : cm);

/** With the map of a draft. */
export const withMap = (form: PieceForm, { rows, columns, areas }: PieceDraft): PieceForm => ({
  ...form,
  map: { rows, columns, areas },
});

/** With so many sides: a second one begins laid out as the first, and takes its areas along when it goes. */
export function withSides(form: PieceForm, count: 1 | 2): PieceForm {
  if (form.sides.length === count) return form;
  const [first = ''] = form.sides;
  const own = form.map.areas.filter((area) => area.side === sideIds[0]);
  if (count === 1) return { ...form, sides: [first], map: { ...form.map, areas: own } };
  const second = own.map((area) => ({
    ...area,
    side: sideIds[1],
    id: idFor(area, sideIds[1], form.map, own),
  }));
  const map = { ...form.map, areas: [...own, ...second] };
  return { ...form, sides: [first, words.sideNames[1]], map };
}

/** What the piece for the opposite hand is called: "left" and "right" change over. */
export function oppositeName(name: string): string {
  for (const [one, other] of hands) {
    for (const [from, to] of [
      [one, other],
      [other, one],
    ] as const) {
      const word = new RegExp(`\\b${from}\\b`);
      if (word.test(name)) return name.replace(word, to);
    }
  }
  return words.copyName(name).slice(0, MOST_TEXT);
}
