// A process of its own for tests that kill it. Runs the build.
//   book-child.mjs commits FOLDER FILE  commits what stands in FILE (JSON) to the book, one after the other, and
//                                       prints the number of each as soon as it is acknowledged
//   book-child.mjs lock FOLDER          takes the folder's lock, prints what came of it, and waits
import { readFileSync, writeSync } from 'node:fs';
import { takeLock } from '../../build/daemon/book/lock.js';
import { threadedBook } from '../../build/daemon/book/thread/threaded-book.js';

const [, , mode, folder, file] = process.argv;

// Straight to the pipe: what was printed is there even if the process is killed with its next breath.
const print = (text) => writeSync(1, `${text}\n`);

if (mode === 'commits') {
  const book = threadedBook({ folder, nowUtcMs: () => 0 });
  await book.open();
  for (const [index, commit] of JSON.parse(readFileSync(file, 'utf8')).entries()) {
    await book.commit(commit);
    print(index);
  }
  await book.close();
} else {
  print(takeLock(folder).kind);
  setInterval(() => undefined, 1000);
}
