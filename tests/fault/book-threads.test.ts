import { describe, expect, it } from 'vitest';
import type * as BookModule from '../../daemon/book/thread/threaded-book.ts';
import type * as ReaderModule from '../../daemon/book/thread/threaded-reader.ts';
import { type Store, storeContract } from '../store-contract.ts';
import { dataFolder, recording, SET_ASIDE_UTC_MS } from '../unit/book/recording.ts';
import { watchRecording } from '../unit/book/watch-recording.ts';

/** The book in its threads, from the build: a thread is a file of its own. */

const built = new URL('../../build/daemon/book/thread/', import.meta.url).href;
const { threadedBook } = (await import(`${built}threaded-book.js`)) as typeof BookModule;
const { threadedReader } = (await import(`${built}threaded-reader.js`)) as typeof ReaderModule;

const threads = (folder: string): Store => ({
  book: threadedBook({ folder, nowUtcMs: () => SET_ASIDE_UTC_MS }),
  reader: threadedReader({ folder }),
});

storeContract('a file in threads of its own', threads);

describe('the threads of the book', () => {
  it('say that they are closed, and close twice', async () => {
    const { book, reader } = threads(dataFolder());
    await book.open();
    await reader.sessions();
    for (const part of [book, reader, book, reader]) await part.close();
    await expect(book.open()).rejects.toMatchObject({
      failure: 'other',
      message: 'The book has been closed.',
    });
    await expect(reader.sessions()).rejects.toMatchObject({ name: 'BookFailure' });
  });

  it('write what was handed over before they close', async () => {
    const folder = dataFolder();
    const { book, reader } = threads(folder);
    const commits = recording('a', { commits: 50 });
    const all = [book.open(), ...commits.map((commit) => book.commit(commit))];
    await book.close();
    await Promise.all(all);
    expect(await reader.session('a')).toMatchObject({ samples: 1000, endWhy: 'cold' });
    await reader.close();
  });

  it('answer short questions during a long verification', async () => {
    const { book, reader } = threads(dataFolder());
    await book.open();
    for (const commit of watchRecording('a', { seconds: 300 })) await book.commit(commit);
    const order: string[] = [];
    const long = reader.verify('a').then((found) => {
      order.push('verified');
      return found;
    });
    await reader.session('a').then(() => order.push('session'));
    expect(await long).toMatchObject({ firstBadCommit: null, differences: [], samples: 12_000 });
    expect(order).toEqual(['session', 'verified']);
    await reader.close();
    await book.close();
  });
});
