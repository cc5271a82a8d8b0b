import type { Database } from 'better-sqlite3';

/** Marks the file as a book of ours among SQLite files ("SOLE"). */
export const APPLICATION_ID = 0x534f4c45;

/**
 * The book's tables. Rows are only ever added.
 *
 * `session.head` is the session's `SessionHead` as JSON. A `link` is one commit: `idx` counts from 0 in its session,
 * `until_seq` and `until_ms` say how far the watch had come (it begins where the one before ended), `samples` and
 * `findings` count from the session's start, `block` holds the samples, `ending` is JSON on the last one. The other
 * inputs and the findings stand in rows of their own, as JSON; `place` is a finding's place in its commit.
 * `sha256` covers all of this: see link.ts.
 */
const FIRST = `
  PRAGMA application_id = ${APPLICATION_ID};

  CREATE TABLE session (
    n INTEGER PRIMARY KEY,
    head TEXT NOT NULL,
    id TEXT NOT NULL GENERATED ALWAYS AS (json_extract(head, '$.id')) VIRTUAL
  ) STRICT;
  CREATE UNIQUE INDEX session_id ON session (id);

  CREATE TABLE link (
    n INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session (n),
    idx INTEGER NOT NULL,
    until_seq INTEGER NOT NULL,
    until_ms INTEGER NOT NULL,
    peak_c REAL,
    samples INTEGER NOT NULL,
    findings INTEGER NOT NULL,
    block BLOB NOT NULL,
    ending TEXT,
    sha256 BLOB NOT NULL CHECK (length(sha256) = 32),
    UNIQUE (session, idx)
  ) STRICT;

  CREATE TABLE input (
    link INTEGER NOT NULL REFERENCES link (n),
    seq INTEGER NOT NULL,
    t_ms INTEGER NOT NULL,
    json TEXT NOT NULL,
    kind TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.kind')) VIRTUAL,
    PRIMARY KEY (link, seq)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE finding (
    link INTEGER NOT NULL REFERENCES link (n),
    place INTEGER NOT NULL,
    seq INTEGER NOT NULL,
    t_ms INTEGER NOT NULL,
    json TEXT NOT NULL,
    kind TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.kind')) VIRTUAL,
    PRIMARY KEY (link, place)
  ) STRICT, WITHOUT ROWID;
`;

/**
 * What named persons found of open items, as JSON, one an item. It stands beside the sessions and belongs to no chain,
 * so that closing an item never touches what was sealed.
 */
const SECOND = `
  CREATE TABLE closing (
    n INTEGER PRIMARY KEY,
    json TEXT NOT NULL,
    item TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.item')) VIRTUAL
  ) STRICT;
  CREATE UNIQUE INDEX closing_item ON closing (item);
  CREATE TRIGGER closing_stays BEFORE UPDATE ON closing
    BEGIN SELECT RAISE(ABORT, 'what was found is never changed'); END;
  CREATE TRIGGER closing_stays_there BEFORE DELETE ON closing
    BEGIN SELECT RAISE(ABORT, 'what was found is never taken away'); END;
`;

/**
 * What named persons said of pieces beside the sessions, as JSON, one row an entry: like closings it belongs to no chain.
 * The index finds what all sessions did to the pieces without reading everything else that they found.
 */
const THIRD = `
  CREATE TABLE note (
    n INTEGER PRIMARY KEY,
    json TEXT NOT NULL,
    command TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.commandId')) VIRTUAL
  ) STRICT;
  CREATE UNIQUE INDEX note_command ON note (command);
  CREATE TRIGGER note_stays BEFORE UPDATE ON note
    BEGIN SELECT RAISE(ABORT, 'what was said is never changed'); END;
  CREATE TRIGGER note_stays_there BEFORE DELETE ON note
    BEGIN SELECT RAISE(ABORT, 'what was said is never taken away'); END;
  CREATE INDEX finding_visit ON finding (link, place) WHERE kind = 'visit';
`;

/**
 * What happened in the shop beside the sessions: coats, what was found of them, the air. As JSON, one row an entry, like
 * notes. The index finds where the air of the last weeks begins.
 */
const FOURTH = `
  CREATE TABLE shop (
    n INTEGER PRIMARY KEY,
    json TEXT NOT NULL,
    command TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.commandId')) VIRTUAL,
    kind TEXT NOT NULL GENERATED ALWAYS AS (json_extract(json, '$.happened.kind')) VIRTUAL
  ) STRICT;
  CREATE UNIQUE INDEX shop_command ON shop (command);
  CREATE INDEX shop_kind ON shop (kind, n);
  CREATE TRIGGER shop_stays BEFORE UPDATE ON shop
    BEGIN SELECT RAISE(ABORT, 'what happened is never changed'); END;
  CREATE TRIGGER shop_stays_there BEFORE DELETE ON shop
    BEGIN SELECT RAISE(ABORT, 'what happened is never taken away'); END;
`;

/** Step n brings a book of version n to version n + 1. Append only: books of every version are out there. */
const migrations: readonly string[] = [FIRST, SECOND, THIRD, FOURTH];

/** The version of a book that this program writes. */
export const BOOK_VERSION = migrations.length;

/** The oldest book that can be read as it stands, where it can't be brought up to date: it only lacks the journals. */
export const OLDEST_READABLE = 1;
export const CLOSINGS_SINCE = 2;
export const NOTES_SINCE = 3;
export const SHOP_SINCE = 4;

/** The tables that a book of this version must have. */
export const tables = ['session', 'link', 'input', 'finding', 'closing', 'note', 'shop'] as const;

export const versionOf = (db: Database): number => Number(db.pragma('user_version', { simple: true }));

/** Brings a book up to date, each step in a transaction of its own: what fails leaves the version before it. */
export function migrate(db: Database, steps: readonly string[] = migrations): void {
  for (let version = versionOf(db); version < steps.length; version++) {
    const step = steps[version] ?? '';
    db.transaction(() => {
      db.exec(step);
      db.pragma(`user_version = ${version + 1}`);
    }).immediate();
  }
}
