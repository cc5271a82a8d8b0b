import type { Database } from 'better-sqlite3';
import type { Entry } from '../../../shared/watch/input.ts';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure, type Commit } from '../book.ts';
import { encodeBlock, type SampleEntry } from '../samples/block.ts';
import { linkOf, NO_LINK, type StoredCommit, type StoredRow } from './link.ts';
import { type BookRows, bookRows, type Tail } from './rows.ts';

/** Adds one commit to the book, in one transaction. Throws; nothing of the commit is in the book then. */
export type Append = (commit: Commit) => void;

/** Where a session's chain goes on. */
type Before = Pick<Tail, 'index' | 'untilSeq' | 'samples' | 'findings' | 'link'>;

export function appender(db: Database, file: string): Append {
  const rows = bookRows(db);
  const insert = inserts(db);
  const append = (commit: Commit): void => {
    const { session, head, before } = place(rows, commit, file);
    const stored = storedCommit(commit, before);
    const number = session ?? insert.session(head ?? '');
    insert.commit(number, stored, linkOf(before.link, head, stored));
  };
  const transaction = db.transaction(append);
  return (commit) => transaction.immediate(commit);
}

/** Finds where the commit belongs, and refuses one that belongs nowhere. */
function place(rows: BookRows, commit: Commit, file: string) {
  const session = rows.sessionNumber(commit.session);
  if (commit.begin !== null) {
    if (session !== null) throw new BookFailure('session-broken', bookWords.sessionExists(commit.session));
    if (commit.begin.id !== commit.session) throw outOfOrder(commit, `it begins as ${commit.begin.id}`);
    const before = { index: -1, untilSeq: commit.begin.firstSeq - 1, samples: 0, findings: 0, link: NO_LINK };
    return { session: null, head: JSON.stringify(commit.begin), before };
  }
  const tail = session === null ? null : rows.tail(session);
  if (tail === null) throw new BookFailure('session-broken', bookWords.sessionGone(commit.session, file));
  if (tail.ending !== null) throw new BookFailure('session-broken', bookWords.sessionEnded(commit.session));
  return { session, head: null, before: tail };
}

function storedCommit(commit: Commit, before: Before): StoredCommit {
  checkOrder(commit, before.untilSeq);
  const samples = commit.entries.filter(isSample);
  return {
    index: before.index + 1,
    untilSeq: commit.untilSeq,
    untilMs: commit.untilMs,
    peakC: commit.peakC,
    samples: before.samples + samples.length,
    findings: before.findings + commit.found.length,
    block: encodeBlock(samples.map(({ seq, tMs, input }) => ({ seq, tMs, sample: input.sample }))),
    ending: commit.end === null ? null : JSON.stringify(commit.end),
    inputs: commit.entries.filter((e) => !isSample(e)).map((e) => rowOf(e, e.input)),
    found: commit.found.map((f) => rowOf(f, f.finding)),
  };
}

const rowOf = ({ seq, tMs }: Omit<SampleEntry, 'sample'>, content: object): StoredRow => ({
  seq,
  tMs,
  json: JSON.stringify(content),
});

type SampleInput = Extract<Entry['input'], { kind: 'sample' }>;
const isSample = (entry: Entry): entry is Entry & { input: SampleInput } => entry.input.kind === 'sample';

/** The sequence number is the only order, so a commit that does not go on from the one before is refused. */
function checkOrder(commit: Commit, after: number): void {
  let before = after;
  for (const { seq, input } of commit.entries) {
    if (!(seq > before)) throw outOfOrder(commit, `input ${seq} comes after ${before}`);
    if (input.kind === 'tick') throw outOfOrder(commit, `input ${seq} is a tick, and ticks are not kept`);
    before = seq;
  }
  if (!(commit.untilSeq >= before))
    throw outOfOrder(commit, `it ends at ${commit.untilSeq}, before ${before}`);
}

const outOfOrder = (commit: Commit, what: string): BookFailure =>
  new BookFailure('session-broken', bookWords.outOfOrder(commit.session, what));

function inserts(db: Database) {
  const session = db.prepare<[string]>('INSERT INTO session (head) VALUES (?)');
  const link = db.prepare(
    `INSERT INTO link (session, idx, until_seq, until_ms, peak_c, samples, findings, block, ending, sha256)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const input = db.prepare('INSERT INTO input (link, seq, t_ms, json) VALUES (?, ?, ?, ?)');
  const finding = db.prepare('INSERT INTO finding (link, place, seq, t_ms, json) VALUES (?, ?, ?, ?, ?)');

  return {
    session: (head: string): number => Number(session.run(head).lastInsertRowid),
    commit(number: number, c: StoredCommit, sha256: Uint8Array): void {
      const { untilSeq, untilMs, peakC, samples, findings, block, ending } = c;
      const row = [number, c.index, untilSeq, untilMs, peakC, samples, findings, block, ending, sha256];
      const n = link.run(...row).lastInsertRowid;
      for (const { seq, tMs, json } of c.inputs) input.run(n, seq, tMs, json);
      for (const [place, { seq, tMs, json }] of c.found.entries()) finding.run(n, place, seq, tMs, json);
    },
  };
}
