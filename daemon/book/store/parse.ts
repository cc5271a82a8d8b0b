import { type ShopEntry, shopEntrySchema } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import type { WatchInput } from '../../../shared/watch/input.ts';
import type { Commit, ItemClosing, SessionHead } from '../book.ts';
import { BookDamaged } from './failure.ts';

/**
 * Reading the JSON that this program wrote. Its shape is not checked again: the chain's links vouch for the text, and
 * an older version's text stands as it was written. All throw `BookDamaged` where it is no JSON object.
 */
export const parseHead = (json: string): SessionHead => object(json) as SessionHead;
export const parseInput = (json: string): WatchInput => object(json) as WatchInput;
export const parseFinding = (json: string): Finding => object(json) as Finding;
export const parseClosing = (json: string): ItemClosing => object(json) as ItemClosing;
export const parseNote = (json: string): PieceNote => object(json) as PieceNote;
export const parseShopEntry = (json: string): ShopEntry => object(json) as ShopEntry;
export const parseEnding = (json: string): NonNullable<Commit['end']> =>
  object(json) as NonNullable<Commit['end']>;

/** An entry of the shop's journal, which no chain vouches for; null: it is none. */
export function readShopEntry(json: string): ShopEntry | null {
  try {
    return shopEntrySchema.safeParse(JSON.parse(json)).data ?? null;
  } catch {
    return null;
  }
}

function object(json: string): object {
  try {
    const value: unknown = JSON.parse(json);
    if (typeof value === 'object' && value !== null) return value;
  } catch {
    // Not JSON: as damaged as JSON of the wrong kind.
  }
  throw new BookDamaged(`unreadable text: ${json.slice(0, 40)}`);
}
