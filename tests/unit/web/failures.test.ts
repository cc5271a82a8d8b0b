import { Writable } from 'node:stream';
import pino from 'pino';
import { describe, expect, it } from 'vitest';
import { BookFailure } from '../../../daemon/book/book.ts';
import { fakeDesk, fakeReader } from './support/fake-desk.ts';
import { summary } from './support/record-samples.ts';
import { eventually, running } from './support/running.ts';

function keptLog(): { readonly lines: string[]; readonly log: pino.Logger } {
  const lines: string[] = [];
  const sink = new Writable({
    write(chunk, _encoding, done) {
      lines.push(String(chunk));
      done();
    },
  });
  return { lines, log: pino({ level: 'error' }, sink) };
}

const withReader = (over: Parameters<typeof fakeReader>[0], log = keptLog().log) =>
  running({ log }, fakeDesk({ reader: fakeReader(over) }));

describe('what fails behind the API', () => {
  it('is told without its insides, and logged with them', async () => {
    const { lines, log } = keptLog();
    const { web, url } = await withReader(
      { sessions: () => Promise.reject(new Error('secret inside')) },
      log,
    );
    const answer = await fetch(`${url}/api/sessions`);
    expect(answer.status).toBe(500);
    expect(await answer.text()).not.toContain('secret');
    expect(lines.join()).toContain('secret inside');
    await web.close();
  });

  it('of the book is told in its own sentence', async () => {
    const { web, url } = await withReader({
      sessions: () => Promise.reject(new BookFailure('locked', 'The book is in use by another program.')),
    });
    const answer = await fetch(`${url}/api/sessions`);
    expect([answer.status, await answer.json()]).toEqual([
      503,
      { error: { message: 'The book is in use by another program.', where: '' } },
    ]);
    await web.close();
  });

  it('before the first line of a CSV is a refusal; after it, the answer breaks off', async () => {
    const path = `/api/sessions/${summary.id}/readings.csv`;
    const before = await withReader({
      readingsCsv: () => failing(0),
    });
    const refused = await fetch(before.url + path);
    expect([refused.status, refused.headers.get('content-disposition')]).toEqual([500, null]);
    expect(refused.headers.get('content-type')).toContain('application/json');
    await before.web.close();
    const after = await withReader({ readingsCsv: () => failing(2) });
    await expect(fetch(after.url + path).then((broken) => broken.text())).rejects.toThrow();
    await after.web.close();
  });
});

describe('a long CSV', () => {
  it('is made only as fast as it is taken, and no longer than somebody takes it', async () => {
    let made = 0;
    let ended = false;
    const { web, url } = await withReader({
      readingsCsv: async function* () {
        try {
          while (made < 1000) {
            made += 1;
            yield 'x'.repeat(65_536);
          }
        } finally {
          ended = true;
        }
      },
    });
    const answer = await fetch(`${url}/api/sessions/${summary.id}/readings.csv`);
    const reader = answer.body?.getReader();
    await reader?.read();
    // What the buffers on the way hold is all that is made: after that the count stands still.
    let before = -1;
    while (made !== before) {
      before = made;
      await new Promise((later) => setTimeout(later, 100));
    }
    expect(made).toBeLessThan(1000);
    await reader?.cancel();
    await eventually(() => ended);
    await web.close();
  });
});

async function* failing(afterChunks: number): AsyncGenerator<string> {
  for (let i = 0; i < afterChunks; i += 1) yield 'line\n';
  throw new Error('the disk is gone');
}
