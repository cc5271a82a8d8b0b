import type { Database } from 'better-sqlite3';
import type { ItemClosing } from '../book.ts';
import { CLOSINGS_SINCE, versionOf } from './migrations.ts';
import { parseClosing } from './parse.ts';

/** What named persons found of items, by item. */
export function closingsIn(db: Database): ReadonlyMap<string, ItemClosing> {
  if (versionOf(db) < CLOSINGS_SINCE) return new Map();
  const rows = db.prepare<[], string>('SELECT json FROM closing ORDER BY n').pluck().all();
  return new Map(rows.map((json) => parseClosing(json)).map((closing) => [closing.item, closing]));
}

/** Adds a closing, unless its item has one; gives the one that stands. */
export function closer(db: Database): (closing: ItemClosing) => ItemClosing {
  const there = db.prepare<[string], string>('SELECT json FROM closing WHERE item = ?').pluck();
  const insert = db.prepare<[string]>('INSERT INTO closing (json) VALUES (?)');
  const close = db.transaction((closing: ItemClosing): ItemClosing => {
    const json = there.get(closing.item);
    if (json !== undefined) return parseClosing(json);
    insert.run(JSON.stringify(closing));
    return closing;
  });
  return (closing) => close.immediate(closing);
}
