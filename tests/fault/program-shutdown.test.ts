import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { isKept } from '../end-to-end/support/api.ts';
import { Board, lineOf } from '../end-to-end/support/board.ts';
import { commandsInBook } from '../end-to-end/support/book.ts';
import { freshFolder } from '../end-to-end/support/folder.ts';
import { startProgram, verify } from '../end-to-end/support/program.ts';
import { until } from '../end-to-end/support/until.ts';

/** The program ends within this of being told to, ms. */
const ENDS_WITHIN_MS = 2000;
/** Lines sent so shortly before it was told may still have been on their way, ms. */
const ON_THEIR_WAY_MS = 500;

describe('a program that is told to stop', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)(
    'by %s has written everything, ended its session, and ends with 0 within two seconds',
    async (signal) => {
      const folder = freshFolder();
      const data = join(folder, 'data');
      const board = new Board(join(folder, 'port'), { plateC: 150 });
      await board.plug();
      const args = ['--serial', board.path];
      const program = await startProgram({ data, args });
      const session = await until('a session is recorded', () => program.api.running());
      const marked = await program.api.post(`/api/sessions/${session}/marks`, {
        commandId: 'rest',
        mark: { kind: 'place', place: 'on-rest' },
      });
      expect(isKept(marked)).toBe(true);

      const toldMs = Date.now();
      expect(await program.end(signal)).toMatchObject({ code: 0, signal: null, stderr: '' });
      expect(Date.now() - toldMs).toBeLessThan(ENDS_WITHIN_MS);

      expect(commandsInBook(data, session, 'mark')).toEqual(['rest']);
      expect(await verify(session, data)).toMatchObject({ code: 0 });
      const again = await startProgram({ data, args });
      expect(await again.api.session(session)).toMatchObject({ endedBecause: 'shutdown' });
      const last = lineOf((await again.api.readings(session)).at(-1) ?? {});
      const due = board.sentAtMs.findLastIndex((atMs) => atMs <= toldMs - ON_THEIR_WAY_MS);
      expect(last).toBeGreaterThanOrEqual(due);
    },
  );

  it('does so too where four boards send 200 lines a second each, to pages that read and one that does not', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const boards = [1, 2, 3, 4].map(
      (n) =>
        new Board(join(folder, `port${n}`), { plateC: 140 + n, everyMs: 20, linesAtOnce: 4, name: `p${n}` }),
    );
    await Promise.all(boards.map((board) => board.plug()));
    const args = boards.flatMap((board) => ['--serial', board.path]);
    const program = await startProgram({ data, args });
    const pages = Array.from({ length: 5 }, () => new WebSocket(`ws://127.0.0.1:${program.port}/stream`));
    onTestFinished(() => pages.forEach((page) => page.terminate()));
    pages[0]?.on('open', () => pages[0]?.pause());
    await until('all four are recorded', async () => (await program.api.sessions()).length === 4);
    await until('a second of lines is kept', async () =>
      (await program.api.sessions()).every((session) => session.samples > 200),
    );

    const toldMs = Date.now();
    expect(await program.end('SIGTERM')).toMatchObject({ code: 0 });
    expect(Date.now() - toldMs).toBeLessThan(ENDS_WITHIN_MS);

    const again = await startProgram({ data, args });
    const sessions = (await again.api.sessions()).filter((session) => session.endedAt !== null);
    expect(sessions.map((session) => session.endedBecause)).toEqual(Array(4).fill('shutdown'));
    for (const { id } of sessions) {
      expect(await again.api.verification(id)).toMatchObject({ exact: true });
    }
  });

  it('while it starts ends with 0 as well', async () => {
    const folder = freshFolder();
    // The address is printed before the book is open.
    const program = await startProgram({ data: join(folder, 'data'), args: ['--simulate'] });
    const toldMs = Date.now();
    expect(await program.end('SIGTERM')).toMatchObject({ code: 0, signal: null });
    expect(Date.now() - toldMs).toBeLessThan(ENDS_WITHIN_MS);
  });

  it('lets go of its data folder and its port: the next start has both', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const first = await startProgram({ data, args: ['--simulate'] });
    await first.end('SIGINT');
    const second = await startProgram({ data, args: ['--simulate'], listen: `127.0.0.1:${first.port}` });
    expect(await second.end('SIGTERM')).toMatchObject({ code: 0 });
  });
});
