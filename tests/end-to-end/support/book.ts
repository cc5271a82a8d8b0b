import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import type { WatchInput } from '../../../shared/watch/input.ts';

/** All inputs but samples that the book in this data folder holds of a session, in order. */
export function inputsInBook(data: string, session: string): readonly WatchInput[] {
  const db = new BetterSqlite3(join(data, 'book.sqlite'), { readonly: true });
  try {
    const rows = db
      .prepare<[string], string>(
        `SELECT r.json FROM session s JOIN link l ON l.session = s.n JOIN input r ON r.link = l.n
         WHERE s.id = ? ORDER BY l.idx, r.seq`,
      )
      .pluck();
    return rows.all(session).map((json) => JSON.parse(json) as WatchInput);
  } finally {
    db.close();
  }
}

/** The ids of the commands of one kind that a session holds. */
export const commandsInBook = (data: string, session: string, kind: WatchInput['kind']): readonly string[] =>
  inputsInBook(data, session).flatMap((input) =>
    input.kind === kind && 'commandId' in input && input.commandId !== null ? [input.commandId] : [],
  );
