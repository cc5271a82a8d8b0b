import type { Database } from 'better-sqlite3';
import type { StoredCommit, StoredRow } from './link.ts';

/** A commit's own row, as SQLite has it. */
interface LinkRow {
  readonly n: number;
  readonly session: number;
  readonly idx: number;
  readonly until_seq: number;
  readonly until_ms: number;
  readonly peak_c: number | null;
  readonly samples: number;
  readonly findings: number;
  readonly block: Uint8Array;
  readonly ending: string | null;
  readonly sha256: Uint8Array;
}

/** The newest commit of a session, without its content. */
export interface Tail extends Omit<StoredCommit, 'block' | 'inputs' | 'found'> {
  readonly link: Uint8Array;
}

export interface CommitRead {
  readonly session: number;
  readonly commit: StoredCommit;
  readonly link: Uint8Array;
}

export type BookRows = ReturnType<typeof bookRows>;

const SELECT_LINK = `SELECT n, session, idx, until_seq, until_ms, peak_c, samples, findings, block, ending, sha256
  FROM link WHERE n = (SELECT n FROM link WHERE session = ? AND idx = ?)`;

/** The statements of one connection. Rows are found by an index and then read from the table, so that both are checked. */
export function bookRows(db: Database) {
  const number = db.prepare<[string], number>('SELECT n FROM session WHERE id = ?').pluck();
  const numbers = db.prepare<[], number>('SELECT n FROM session ORDER BY n DESC').pluck();
  const head = db.prepare<[number], string>('SELECT head FROM session WHERE n = ?').pluck();
  const lastIndex = db
    .prepare<[number], number | null>('SELECT max(idx) FROM link WHERE session = ?')
    .pluck();
  const link = db.prepare<[number, number], LinkRow>(SELECT_LINK);
  const inputs = db.prepare<[number], StoredRow>(
    'SELECT seq, t_ms AS tMs, json FROM input WHERE link = ? ORDER BY seq',
  );
  const found = db.prepare<[number], StoredRow>(
    'SELECT seq, t_ms AS tMs, json FROM finding WHERE link = ? ORDER BY place',
  );
  const findings = db.prepare<[number], StoredRow>(
    `SELECT f.seq, f.t_ms AS tMs, f.json FROM link l CROSS JOIN finding f ON f.link = l.n
     WHERE l.session = ? ORDER BY l.idx, f.place`,
  );

  return {
    /** A session's number in this book; null where it isn't there. */
    sessionNumber: (id: string): number | null => number.get(id) ?? null,
    /** All sessions' numbers, newest first. */
    sessionNumbers: (): number[] => numbers.all(),
    /** A session's head, as JSON. */
    head: (session: number): string => head.get(session) ?? '',
    lastIndex: (session: number): number | null => lastIndex.get(session) ?? null,
    /** A session's newest commit; null where it has none. */
    tail(session: number): Tail | null {
      const row = link.get(session, lastIndex.get(session) ?? -1);
      return row === undefined ? null : tailOf(row);
    },
    /** All findings of a session, in order. */
    findings: (session: number): StoredRow[] => findings.all(session),
    /** One commit with all that it holds; null where it isn't there. */
    commit(session: number, index: number): CommitRead | null {
      const row = link.get(session, index);
      if (row === undefined) return null;
      return {
        session: row.session,
        commit: commitOf(row, inputs.all(row.n), found.all(row.n)),
        link: row.sha256,
      };
    },
  };
}

const headOf = (row: LinkRow): Omit<Tail, 'link'> => ({
  index: row.idx,
  untilSeq: row.until_seq,
  untilMs: row.until_ms,
  peakC: row.peak_c,
  samples: row.samples,
  findings: row.findings,
  ending: row.ending,
});

const tailOf = (row: LinkRow): Tail => ({ ...headOf(row), link: row.sha256 });

const commitOf = (row: LinkRow, inputs: readonly StoredRow[], found: readonly StoredRow[]): StoredCommit => ({
  ...headOf(row),
  block: row.block,
  inputs,
  found,
});
