import type { Database } from 'better-sqlite3';
import { AIR_KEPT } from '../../../shared/shop/drying.ts';
import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import { NOTES_SINCE, SHOP_SINCE, versionOf } from './migrations.ts';
import { parseNote, parseShopEntry } from './parse.ts';

/** The journals beside the sessions: each row is an entry as JSON, of one command, and stays as it was written. */

/** What named persons said of pieces, in the order in which they said it. */
export function notesIn(db: Database): readonly PieceNote[] {
  if (versionOf(db) < NOTES_SINCE) return [];
  return db.prepare<[], string>('SELECT json FROM note ORDER BY n').pluck().all().map(parseNote);
}

const ENTRIES = `SELECT json FROM shop WHERE kind <> 'air' OR n >= coalesce(
    (SELECT n FROM shop WHERE kind = 'air' ORDER BY n DESC LIMIT 1 OFFSET ${AIR_KEPT - 1}), 0)
  ORDER BY n`;

/** What happened in the shop, in the order in which it happened; of the air only the latest. */
export function shopEntriesIn(db: Database): readonly ShopEntry[] {
  if (versionOf(db) < SHOP_SINCE) return [];
  return db.prepare<[], string>(ENTRIES).pluck().all().map(parseShopEntry);
}

type Keep<T> = (entry: T) => T;

export const noter = (db: Database): Keep<PieceNote> => keeper(db, 'note', parseNote);
export const shopKeeper = (db: Database): Keep<ShopEntry> => keeper(db, 'shop', parseShopEntry);

/** Adds an entry, unless one of the same command stands; gives the one that stands. */
function keeper<T extends { readonly commandId: string }>(
  db: Database,
  table: 'note' | 'shop',
  parse: (json: string) => T,
): Keep<T> {
  const there = db.prepare<[string], string>(`SELECT json FROM ${table} WHERE command = ?`).pluck();
  const insert = db.prepare<[string]>(`INSERT INTO ${table} (json) VALUES (?)`);
  const add = db.transaction((entry: T): T => {
    const json = there.get(entry.commandId);
    if (json !== undefined) return parse(json);
    insert.run(JSON.stringify(entry));
    return entry;
  });
  return (entry) => add.immediate(entry);
}
