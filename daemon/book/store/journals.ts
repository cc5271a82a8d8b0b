import type { Database } from 'better-sqlite3';
import { AIR_KEPT } from '../../../shared/shop/drying.ts';
import type { ShopEntry } from '../../../shared/shop/entry.ts';
import type { PieceNote } from '../../../shared/shop/note.ts';
import type { ShopRecord } from '../book.ts';
import { NOTES_SINCE, SHOP_SINCE, versionOf } from './migrations.ts';
import { parseNote, parseShopEntry, readShopEntry } from './parse.ts';

/** The journals beside the sessions: each row is an entry as JSON, of one command, and stays as it was written. */

/** What named persons said of pieces, in the order in which they said it. */
export function notesIn(db: Database): readonly PieceNote[] {
  if (versionOf(db) < NOTES_SINCE) return [];
  return db.prepare<[], string>('SELECT json FROM note ORDER BY n').pluck().all().map(parseNote);
}

/** Nothing can be asked of a row that is no JSON. */
const SIMULATED = `CASE WHEN json_valid(json) THEN json_extract(json, '$.simulated') END`;
/** Where the latest air of the real shop begins, or of the simulated one. */
const airFrom = (simulated: 0 | 1): string => `coalesce((SELECT n FROM shop
  WHERE kind = 'air' AND ${SIMULATED} = ${simulated} ORDER BY n DESC LIMIT 1 OFFSET ${AIR_KEPT - 1}), 0)`;
const ENTRIES = `SELECT json FROM shop WHERE CASE WHEN json_valid(json)
    THEN kind <> 'air' OR n >= CASE ${SIMULATED} WHEN 1 THEN ${airFrom(1)} ELSE ${airFrom(0)} END
    ELSE TRUE END
  ORDER BY n`;

/**
 * What happened in the shop, in the order in which it happened; of the air only the latest, of the real shop and of the
 * simulated one each. One row that is no entry must not keep all others from being read.
 */
export function shopEntriesIn(db: Database): Pick<ShopRecord, 'entries' | 'unreadable'> {
  if (versionOf(db) < SHOP_SINCE) return { entries: [], unreadable: 0 };
  const rows = db.prepare<[], string>(ENTRIES).pluck().all();
  const entries = rows.map(readShopEntry).filter((entry) => entry !== null);
  return { entries, unreadable: rows.length - entries.length };
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
