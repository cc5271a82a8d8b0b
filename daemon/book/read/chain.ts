import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Entry } from '../../../shared/watch/input.ts';
import { chainWords } from '../../../shared/words/book.ts';
import { decodeBlock } from '../samples/block.ts';
import { BlockDamaged } from '../samples/bytes.ts';
import { BookDamaged, codeOf } from '../store/failure.ts';
import { linkOf, NO_LINK, type StoredCommit } from '../store/link.ts';
import { parseFinding, parseInput } from '../store/parse.ts';
import type { BookRows, CommitRead } from '../store/rows.ts';

/** A commit whose link holds, unpacked. */
export interface GoodCommit {
  readonly index: number;
  readonly fromMs: number;
  readonly untilMs: number;
  /** Inputs and samples in the order of their sequence numbers. */
  readonly entries: readonly Entry[];
  readonly found: readonly FoundEntry[];
  readonly next: ChainPlace;
}

/** The first commit of a session that is not what was once written; nothing after it can be vouched for. */
export class ChainBroken extends Error {
  readonly index: number;
  readonly fromMs: number;
  readonly toMs: number;

  constructor(at: { index: number; fromMs: number; toMs: number }, what: string) {
    super(what);
    this.name = 'ChainBroken';
    this.index = at.index;
    this.fromMs = at.fromMs;
    this.toMs = Math.max(at.fromMs, at.toMs);
  }
}

/** Where a session's chain goes on. */
export interface ChainPlace {
  /** Of the next commit. */
  readonly index: number;
  /** The link before it. */
  readonly link: Uint8Array;
  /** How far the commits before it have come. */
  readonly untilMs: number;
  readonly samples: number;
  readonly findings: number;
}

export const chainStart = (firstMs: number): ChainPlace => ({
  index: 0,
  link: NO_LINK,
  untilMs: firstMs,
  samples: 0,
  findings: 0,
});

/**
 * A session's commits in order, each checked against its link before it is believed, up to the one that was the
 * newest when the walk began. Throws `ChainBroken`.
 */
export function* walkChain(rows: BookRows, session: number, firstMs: number): Generator<GoodCommit> {
  const last = rows.lastIndex(session) ?? 0;
  for (let at = chainStart(firstMs); at.index <= last; ) {
    const good = commitAt(rows, session, at);
    at = good.next;
    yield good;
  }
}

/** The commit at this place, checked; there must be one. Throws `ChainBroken`. */
export function commitAt(rows: BookRows, session: number, at: ChainPlace): GoodCommit {
  const { index, untilMs: fromMs } = at;
  const { commit, link } = readOrBreak(rows, { session, index, fromMs, toMs: fromMs });
  const span = { index, fromMs, toMs: commit.untilMs };
  const head = index === 0 ? rows.head(session) : null;
  if (!Buffer.from(link).equals(linkOf(at.link, head, commit)))
    throw new ChainBroken(span, chainWords.changed);
  const good = unpackOrBreak(commit, span);
  const samples = at.samples + good.entries.length - commit.inputs.length;
  const findings = at.findings + good.found.length;
  if (samples !== commit.samples || findings !== commit.findings)
    throw new ChainBroken(span, chainWords.miscounted);
  const next = { index: index + 1, link, untilMs: commit.untilMs, samples, findings };
  return { index, fromMs, untilMs: span.toMs, ...good, next };
}

interface Span {
  readonly index: number;
  readonly fromMs: number;
  readonly toMs: number;
}

function readOrBreak(rows: BookRows, span: Span & { session: number }): CommitRead {
  let read: CommitRead | null;
  try {
    read = rows.commit(span.session, span.index);
  } catch (error) {
    // A garbled page; any other trouble (a lock, the disk) says nothing about the commit.
    if (!codeOf(error).startsWith('SQLITE_CORRUPT')) throw error;
    throw new ChainBroken(span, chainWords.unreadable(codeOf(error)));
  }
  if (read === null) throw new ChainBroken(span, chainWords.missing);
  if (read.session !== span.session || read.commit.index !== span.index)
    throw new ChainBroken(span, chainWords.misplaced);
  return read;
}

function unpackOrBreak(commit: StoredCommit, span: Span): Pick<GoodCommit, 'entries' | 'found'> {
  try {
    return {
      entries: entriesOf(commit),
      found: commit.found.map((f) => ({ seq: f.seq, tMs: f.tMs, finding: parseFinding(f.json) })),
    };
  } catch (error) {
    if (!(error instanceof BlockDamaged || error instanceof BookDamaged)) throw error;
    throw new ChainBroken(span, chainWords.unreadable(error.message));
  }
}

function entriesOf(commit: StoredCommit): Entry[] {
  const samples = decodeBlock(commit.block).map(
    ({ seq, tMs, sample }): Entry => ({ seq, tMs, input: { kind: 'sample', sample } }),
  );
  const inputs = commit.inputs.map(({ seq, tMs, json }): Entry => ({ seq, tMs, input: parseInput(json) }));
  return inputs.length === 0 ? samples : [...samples, ...inputs].sort((a, b) => a.seq - b.seq);
}
