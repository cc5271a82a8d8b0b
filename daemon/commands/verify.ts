import { verifyWords } from '../../shared/words/verify.ts';
import type { FindingDifference } from '../book/book.ts';
import { threadedReader } from '../book/thread/threaded-reader.ts';

const SHOWN = 20;

/**
 * Checks a stored session's seal, folds it again and prints the differences.
 * @returns the exit code: 0 where all agrees, 1 where something differs or there is no such session
 */
export async function verifyCommand(
  { session, dataDir }: { readonly session: string; readonly dataDir: string },
  say: (text: string) => void,
): Promise<number> {
  const reader = threadedReader({ folder: dataDir });
  try {
    if ((await reader.session(session)) === null) {
      say(verifyWords.noSession(session, dataDir));
      return 1;
    }
    const found = await reader.verify(session);
    const bad = found.firstBadCommit;
    say(verifyWords.counts(found.samples, found.findings));
    say(
      bad === null
        ? verifyWords.sealHolds
        : verifyWords.sealBroken(bad.index, bad.fromMs, bad.toMs, bad.what),
    );
    if (!found.sameFoldVersion) say(verifyWords.otherVersion(found.foldVersion));
    say(verifyWords.differences(found.differences.length));
    for (const difference of found.differences.slice(0, SHOWN)) say(describe(difference));
    return bad === null && found.differences.length === 0 ? 0 : 1;
  } finally {
    await reader.close();
  }
}

function describe({ seq, subject, stored, replayed }: FindingDifference): string {
  const text = (entry: typeof stored): string =>
    entry === null ? verifyWords.none : JSON.stringify(entry.finding);
  return verifyWords.difference(seq, subject, text(stored), text(replayed));
}
