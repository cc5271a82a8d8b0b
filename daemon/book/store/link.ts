import { createHash } from 'node:crypto';

/** One commit as it stands in the book: text and bytes exactly as stored. */
export interface StoredCommit {
  readonly index: number;
  readonly untilSeq: number;
  readonly untilMs: number;
  readonly peakC: number | null;
  /** Counted from the session's start. */
  readonly samples: number;
  readonly findings: number;
  readonly block: Uint8Array;
  /** JSON of the session's end, on its last commit. */
  readonly ending: string | null;
  readonly inputs: readonly StoredRow[];
  readonly found: readonly StoredRow[];
}

export interface StoredRow {
  readonly seq: number;
  readonly tMs: number;
  readonly json: string;
}

/** What comes before a session's first link. */
export const NO_LINK: Uint8Array = new Uint8Array(32);

/**
 * The link of a commit in its session's chain: SHA-256 over three parts, one after the other,
 *
 * 1. the 32 bytes of the link before it (zeros before the first),
 * 2. in UTF-8, one JSON array, with no white space and numbers as ECMAScript writes them (RFC 8785, 3.2.2.3):
 *    `["soleplate-link-1", index, head, untilSeq, untilMs, peakC, samples, findings, inputs, found, ending]`,
 *    where `head` is the session's head on the first commit and else null, `inputs` and `found` are arrays of
 *    `[seq, tMs, text]` in the order of their rows, and heads, texts and endings are strings: the JSON in the row,
 * 3. the block of samples.
 */
export function linkOf(before: Uint8Array, head: string | null, commit: StoredCommit): Uint8Array {
  const text = JSON.stringify([
    'soleplate-link-1',
    commit.index,
    commit.index === 0 ? head : null,
    commit.untilSeq,
    commit.untilMs,
    commit.peakC,
    commit.samples,
    commit.findings,
    rows(commit.inputs),
    rows(commit.found),
    commit.ending,
  ]);
  return createHash('sha256').update(before).update(text, 'utf8').update(commit.block).digest();
}

const rows = (list: readonly StoredRow[]) => list.map((row) => [row.seq, row.tMs, row.json]);
