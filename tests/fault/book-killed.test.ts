import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BookFileReader } from '../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../daemon/book/store/book-file.ts';
import { runChild } from '../unit/book/child.ts';
import { dataFolder, foundOf, littleFold, recording, SET_ASIDE_UTC_MS } from '../unit/book/recording.ts';
import { toEnd } from '../unit/book/stores.ts';

/** Which acknowledgement the kill follows, the same in each run (Lehmer's generator). */
const killAfter = (round: number): number => ((round + 1) * 48_271 * 48_271) % 43;

describe('a process killed with SIGKILL in the middle of committing', () => {
  const commits = recording('a', { commits: 300, ended: false });

  it.each(Array.from({ length: 20 }, (_, round) => round))(
    'round %i: all that was acknowledged is there',
    async (round) => {
      const folder = dataFolder();
      const file = join(folder, 'commits.json');
      writeFileSync(file, JSON.stringify(commits));
      let acknowledged = 0;
      await runChild(['commits', folder, file], (line, child) => {
        acknowledged = Number(line) + 1;
        if (Number(line) === killAfter(round)) child.kill('SIGKILL');
      });
      expect(acknowledged).toBeGreaterThan(killAfter(round));
      expect(acknowledged).toBeLessThan(commits.length);

      // The log is read as it was left, before anybody has opened the book for writing.
      const unopened = new BookFileReader(folder, littleFold).session('a');
      expect(unopened).toMatchObject({ endedAtUtc: null });
      expect(unopened?.samples).toBeGreaterThanOrEqual(acknowledged * 20);

      const book = new BookFile(folder);
      const opened = book.open(SET_ASIDE_UTC_MS);
      expect(opened).toMatchObject({ setAside: null, notKept: null, interrupted: [{ id: 'a' }] });
      book.close();
      const reader = new BookFileReader(folder, littleFold);
      const verified = toEnd(reader.verify('a'));
      expect(verified).toMatchObject({ firstBadCommit: null, differences: [] });
      const kept = verified.samples / 20;
      // One more may have been written before its acknowledgement was.
      expect(kept).toBeGreaterThanOrEqual(acknowledged);
      expect(kept).toBeLessThanOrEqual(acknowledged + 1);
      expect(reader.findings('a')).toEqual(foundOf(commits.slice(0, kept)));
      expect(reader.session('a')?.endWhy).toBe('interrupted');
    },
  );
});
