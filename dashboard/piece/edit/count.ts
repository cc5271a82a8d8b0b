import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { readNumber } from '../../setup/fields/number.ts';

/** The whole number in a text, from 1 to `most`; null for anything else. */
export function readCount(text: string, most: number): number | null {
  const number = readNumber(text);
  return number !== null && Number.isInteger(number) && number >= 1 && number <= most ? number : null;
}

export const countError = (text: string, most: number): string =>
  readCount(text, most) === null ? words.wholeNumber(most) : '';
