import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import { encodeBlock } from '../../../daemon/book/samples/block.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import { dataFolder, SET_ASIDE_UTC_MS } from './recording.ts';
import { watchFold } from './stores.ts';
import { watchRecording } from './watch-recording.ts';

it('a sample costs at most 20 bytes of the file, and 12 of its block, at 4 probes and 10 Hz', {
  timeout: 60_000,
}, () => {
  const folder = dataFolder();
  const book = new BookFile(folder);
  book.open(SET_ASIDE_UTC_MS);
  let inBlocks = 0;
  for (const commit of watchRecording('a', { seconds: 600 })) {
    const samples = commit.entries.flatMap(({ seq, tMs, input }) =>
      input.kind === 'sample' ? [{ seq, tMs, sample: input.sample }] : [],
    );
    inBlocks += encodeBlock(samples).length;
    book.commit(commit, SET_ASIDE_UTC_MS);
  }
  book.close();
  const samples = new BookFileReader(folder, watchFold).session('a')?.samples ?? 0;
  expect(samples).toBe(600 * 40);
  expect(inBlocks / samples).toBeLessThan(12);
  expect(statSync(join(folder, 'book.sqlite')).size / samples).toBeLessThan(20);
});
