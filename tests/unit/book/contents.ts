import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';

/** Every row of every table of a book, as another connection sees it. */
export function contentsOf(folder: string): Record<string, unknown[]> {
  const db = new BetterSqlite3(join(folder, 'book.sqlite'), { readonly: true });
  try {
    const all = (table: string): unknown[] => db.prepare(`SELECT * FROM ${table} ORDER BY 1, 2`).all();
    return { session: all('session'), link: all('link'), input: all('input'), finding: all('finding') };
  } finally {
    db.close();
  }
}

/** Changes a book behind the program's back. */
export function tamper(folder: string, sql: string, ...values: unknown[]): void {
  const db = new BetterSqlite3(join(folder, 'book.sqlite'));
  try {
    const changed = db.prepare(sql).run(...values).changes;
    if (changed !== 1) throw new Error(`${sql}: ${changed} rows changed`);
  } finally {
    db.close();
  }
}

/** Makes a book say that it is of another version. */
export function sayVersion(folder: string, version: number): void {
  const db = new BetterSqlite3(join(folder, 'book.sqlite'));
  db.pragma(`user_version = ${version}`);
  db.close();
}
