import { z } from 'zod';

/** What an iron's dial stands at, as printed on it: a number, or a word or sign ("wool"). */
export const dialMarkSchema = z.union([z.number().min(0).max(1000), z.string().trim().min(1).max(20)]);
export type DialMark = z.infer<typeof dialMarkSchema>;

/** What the user said of the dial, and when, ms of the watch's clock. */
export interface ToldDial {
  readonly mark: DialMark;
  readonly toldMs: number;
}

/**
 * Where a mark stands on its scale, as a number; null for a word that the scale doesn't have.
 * @param words the words on the dial from the coldest up, none for a dial of numbers: the first counts as 1
 */
export function markNumber(mark: DialMark, words: readonly string[]): number | null {
  if (typeof mark === 'number') return mark;
  const at = words.indexOf(mark);
  return at === -1 ? null : at + 1;
}

/** Marks closer than this are one: told ones come in tenths or halves, and nobody sets a dial finer (our own choice). */
const SAME_MARK = 0.05;
export const isSameMark = (a: number, b: number): boolean => Math.abs(a - b) < SAME_MARK;
