import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Entry } from '../../../shared/watch/input.ts';
import { chainWords } from '../../../shared/words/book.ts';
import type { SessionHead, Verification } from '../book.ts';
import type { BookRows } from '../store/rows.ts';
import { ChainBroken, type GoodCommit, walkChain } from './chain.ts';
import { compareFindings } from './compare.ts';
import type { Fold } from './fold.ts';

/**
 * Checks a session's chain and folds its inputs again, yielding now and then so that other work gets its turn. Where
 * the chain breaks, what stands before the break is compared.
 */
export function* verifySession(
  rows: BookRows,
  session: number,
  head: SessionHead,
  fold: Fold,
): Generator<undefined, Verification> {
  const exact = head.foldVersion === fold.version;
  const seen = new Seen();
  const replayed: FoundEntry[] = [];
  const untilMs = rows.tail(session)?.untilMs ?? head.firstMs;
  try {
    for (const step of fold.replay(seen.watch(walkChain(rows, session, head.firstMs)), untilMs, exact)) {
      for (const found of step.found) replayed.push(found);
      if (step.entry === null) seen.finished();
      else if (seen.replayed(step.entry)) yield;
    }
  } catch (error) {
    seen.broken(error);
  }
  return {
    id: head.id,
    firstBadCommit: seen.firstBad,
    foldVersion: head.foldVersion,
    sameFoldVersion: exact,
    differences: compareFindings(seen.comparable(seen.found), seen.comparable(replayed), exact),
    findings: seen.found.length,
    samples: seen.samples,
  };
}

/** How far a verification has come. */
class Seen {
  readonly found: FoundEntry[] = [];
  samples = 0;
  firstBad: Verification['firstBadCommit'] = null;
  /** The commit that is being replayed. */
  #commit: GoodCommit | null = null;
  #lastSeq = Number.NEGATIVE_INFINITY;

  /** The entries of the commits that pass, noting what they hold. */
  *watch(commits: Iterable<GoodCommit>): Generator<Entry> {
    for (const commit of commits) {
      this.#commit = commit;
      for (const found of commit.found) this.found.push(found);
      for (const entry of commit.entries) {
        if (entry.input.kind === 'sample') this.samples++;
        yield entry;
      }
    }
  }

  /** Notes an entry as replayed; true where it was the last of its commit. */
  replayed(entry: Entry): boolean {
    this.#lastSeq = entry.seq;
    return entry === this.#commit?.entries.at(-1);
  }

  finished(): void {
    this.#lastSeq = Number.POSITIVE_INFINITY;
  }

  /** Notes where the chain breaks, or where its inputs can't be folded; throws on anything else. */
  broken(error: unknown): void {
    if (error instanceof ChainBroken) {
      const { index, fromMs, toMs, message } = error;
      this.firstBad = { index, fromMs, toMs, what: message };
    } else if (error instanceof RangeError && this.#commit !== null) {
      const { index, fromMs, untilMs } = this.#commit;
      this.firstBad = { index, fromMs, toMs: untilMs, what: chainWords.notReplayed(error.message) };
    } else throw error;
  }

  /** Only what was caused by a replayed input can be compared. */
  comparable(found: readonly FoundEntry[]): FoundEntry[] {
    return found.filter((f) => f.seq <= this.#lastSeq);
  }
}
