import type { Database } from 'better-sqlite3';
import type { PieceNote } from '../../../shared/shop/note.ts';
import { NOTES_SINCE, versionOf } from './migrations.ts';
import { parseNote } from './parse.ts';

/** What named persons said of pieces, in the order in which they said it. */
export function notesIn(db: Database): readonly PieceNote[] {
  if (versionOf(db) < NOTES_SINCE) return [];
  return db.prepare<[], string>('SELECT json FROM note ORDER BY n').pluck().all().map(parseNote);
}

/** Adds a note, unless one of the same command stands; gives the one that stands. */
export function noter(db: Database): (note: PieceNote) => PieceNote {
  const there = db.prepare<[string], string>('SELECT json FROM note WHERE command = ?').pluck();
  const insert = db.prepare<[string]>('INSERT INTO note (json) VALUES (?)');
  const add = db.transaction((note: PieceNote): PieceNote => {
    const json = there.get(note.commandId);
    if (json !== undefined) return parseNote(json);
    insert.run(JSON.stringify(note));
    return note;
  });
  return (note) => add.immediate(note);
}
