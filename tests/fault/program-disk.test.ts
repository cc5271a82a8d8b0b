import { spawnSync } from 'node:child_process';
import {
  closeSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { type Answer, isKept } from '../end-to-end/support/api.ts';
import { Board, lineOf } from '../end-to-end/support/board.ts';
import { freshFolder } from '../end-to-end/support/folder.ts';
import { type Program, startProgram, verify } from '../end-to-end/support/program.ts';
import { until } from '../end-to-end/support/until.ts';
import { canMount, smallDisk } from '../unit/book/small-disk.ts';

/** The program while its data folder fails: it goes on watching, says why nothing is kept, and keeps again by itself. */

if (!canMount)
  console.warn(
    'Not tested here: disks that are full or read-only. Only root may mount one, outside a container.',
  );

async function hotBoard(folder: string): Promise<Board> {
  const board = new Board(join(folder, 'port'), { plateC: 150 });
  await board.plug();
  return board;
}

const notRecording = (program: Program): Promise<AlarmLive> =>
  until('it is an alarm that nothing is kept', async () => {
    const alarm = await program.api.alarm('not-recording');
    return alarm?.state === 'unacknowledged' ? alarm : null;
  });

const keptAgain = (program: Program): Promise<unknown> =>
  until('it keeps again', async () => {
    const { kept } = (await program.api.live()).situation.keeping;
    return kept && (await program.api.alarm('not-recording'))?.state === 'returned-unacknowledged';
  });

async function markNote(program: Program, commandId: string): Promise<Answer> {
  const session = await program.api.running();
  return program.api.post(`/api/sessions/${session}/marks`, {
    commandId,
    mark: { kind: 'note', text: commandId },
  });
}

/** Watching goes on: the plate is read, and its overheating is an alarm. */
async function expectWatching(program: Program, board: Board): Promise<void> {
  expect(await program.api.probe()).toMatchObject({ quality: 'ok' });
  await board.bring(195);
  await until('the overheat is an alarm', () => program.api.alarm('over-limit'));
}

/** The lines that the sessions of the book hold, the oldest session first. */
async function linesInBook(program: Program): Promise<number[]> {
  const sessions = (await program.api.sessions()).toReversed();
  const readings = await Promise.all(sessions.map(({ id }) => program.api.readings(id)));
  return readings.flat().map(lineOf);
}

/** Writes a file until the disk is full. The program writes there too: how much room there is can't be asked first. */
function fill(file: string): void {
  const opened = openSync(file, 'w');
  try {
    for (;;) writeSync(opened, Buffer.alloc(4096));
  } catch (error) {
    expect(error).toMatchObject({ code: 'ENOSPC' });
  } finally {
    closeSync(opened);
  }
}

async function expectNoGap(program: Program): Promise<void> {
  const lines = await until('some seconds of lines are kept', async () => {
    const kept = await linesInBook(program);
    return kept.length > 10 && kept;
  });
  const [first = 0] = lines;
  expect(lines).toEqual(lines.map((_, i) => first + i));
}

async function expectAllExact(program: Program): Promise<void> {
  for (const { id } of await program.api.sessions())
    expect(await program.api.verification(id)).toMatchObject({ exact: true });
}

describe('a data folder in which no book can be opened', () => {
  it('is said with the reason; once one can, all since the start is kept', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    mkdirSync(join(data, 'book.sqlite'), { recursive: true });
    const board = await hotBoard(folder);
    const program = await startProgram({ data, args: ['--serial', board.path] });
    const alarm = await notRecording(program);
    expect(alarm.detail).toContain(join(data, 'book.sqlite'));
    expect((await program.api.health()).keeping).toEqual({ kept: false, detail: alarm.detail });
    await until('the plate is read', async () => (await program.api.probe())?.quality === 'ok');
    await until('a session runs all the same', () => program.api.running());
    const marked = await markNote(program, 'not-kept-yet');
    expect(marked).toMatchObject({ status: 200, body: { kept: false } });
    await expectWatching(program, board);

    rmdirSync(join(data, 'book.sqlite'));
    await keptAgain(program);
    expect(isKept(await markNote(program, 'kept'))).toBe(true);
    await expectNoGap(program);
    await expectAllExact(program);
  });
});

describe('a disk on which no file can grow', () => {
  it.runIf(process.platform === 'linux')(
    'in mid-session: the same session goes on without a gap',
    async () => {
      const folder = freshFolder();
      const data = join(folder, 'data');
      const board = await hotBoard(folder);
      const program = await startProgram({ data, args: ['--serial', board.path] });
      const session = await until('a session is recorded', async () => (await program.api.sessions())[0]?.id);
      const limit = (bytes: string): void => {
        const done = spawnSync('prlimit', ['--pid', String(program.pid), `--fsize=${bytes}:`]);
        expect(done.status, String(done.stderr)).toBe(0);
      };

      // Less than one page of the log.
      limit('1000');
      const alarm = await notRecording(program);
      expect(alarm.detail).not.toBe('');
      expect(await markNote(program, 'on-full')).toMatchObject({ body: { kept: false } });
      await expectWatching(program, board);

      limit('unlimited');
      await keptAgain(program);
      expect(isKept(await markNote(program, 'on-free'))).toBe(true);
      expect((await program.api.sessions()).map((s) => s.id)).toEqual([session]);
      await expectNoGap(program);
      await expectAllExact(program);
    },
  );

  it.runIf(canMount)('a full one: says so, and goes on once there is room', async () => {
    const folder = freshFolder();
    const disk = smallDisk(3_000_000);
    const board = await hotBoard(folder);
    const program = await startProgram({ data: disk.folder, args: ['--serial', board.path] });
    await until('a session is recorded', async () => (await program.api.sessions()).length > 0);
    const filler = join(disk.folder, 'filler');
    fill(filler);

    const alarm = await notRecording(program);
    expect(alarm.detail).toContain('The disk is full');
    const answer = await putLabel(program, 'while full');
    expect(answer.status).toBe(409);
    expect((await program.api.probes())[0]?.label).not.toBe('while full');
    await expectWatching(program, board);

    rmSync(filler);
    await keptAgain(program);
    expect((await putLabel(program, 'with room')).status).toBe(200);
    await expectNoGap(program);
    await expectAllExact(program);
  });
});

async function putLabel(program: Program, label: string): Promise<Answer> {
  const [probe] = await program.api.probes();
  if (probe === undefined) throw new Error('there is no probe');
  const { id, ...draft } = probe;
  return program.api.put(`/api/probes/${encodeURIComponent(id)}`, { ...draft, label });
}

describe('a folder that can only be read', () => {
  it.runIf(canMount)('is watched over from the start, and is written to once it can be', async () => {
    const folder = freshFolder();
    const disk = smallDisk(3_000_000);
    disk.remount('ro');
    const board = await hotBoard(folder);
    const program = await startProgram({ data: disk.folder, args: ['--serial', board.path] });
    const alarm = await notRecording(program);
    expect(alarm.detail).toContain("can't be written to");
    await until('the plate is read', async () => (await program.api.probe())?.quality === 'ok');
    await expectWatching(program, board);

    disk.remount('rw');
    await keptAgain(program);
    await expectNoGap(program);
    await expectAllExact(program);
    const file = join(disk.folder, 'settings.json');
    await until('the new probe is in the settings', () =>
      readFileSync(file, 'utf8').includes(`${board.path}/1`),
    );
  });

  it.runIf(canMount)('what broke off before is gone on with once it can be read again', async () => {
    const folder = freshFolder();
    const disk = smallDisk(3_000_000);
    const board = await hotBoard(folder);
    const args = ['--serial', board.path];
    const before = await startProgram({ data: disk.folder, args });
    await board.bring(195);
    await until('the plate is over the limit', () => before.api.alarm('over-limit'));
    const session = await until('it is in the book', async () => (await before.api.sessions())[0]?.id);
    await until(
      'the alarm is in the book',
      async () => (await before.api.alarmFindings(session, 'over-limit')).length > 0,
    );
    await before.end('SIGKILL');
    await board.bring(150);

    disk.remount('ro');
    const program = await startProgram({ data: disk.folder, args });
    await notRecording(program);
    await until('the plate is read', async () => (await program.api.probe())?.quality === 'ok');
    disk.remount('rw');
    await keptAgain(program);
    const alarm = await until('the alarm of before stands', () => program.api.alarm('over-limit'));
    expect(alarm.state).toMatch(/unacknowledged/);
    const running = await until('a session goes on', () => program.api.running());
    const gone = await until('it is in the book', () => program.api.session(running));
    expect(gone.continues).toBe(session);
    await expectAllExact(program);
  });
});

describe('a book that is damaged', () => {
  it('is set aside under another name, not deleted, and a new one begun', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    mkdirSync(data);
    const garbage = Buffer.from('this is no book at all. '.repeat(1000));
    writeFileSync(join(data, 'book.sqlite'), garbage);
    const board = await hotBoard(folder);
    const program = await startProgram({ data, args: ['--serial', board.path] });
    const aside = await until('it is set aside', () =>
      readdirSync(data).find((name) => /^book-damaged-.*\.sqlite$/.test(name)),
    );
    expect(readFileSync(join(data, aside))).toEqual(garbage);
    await until('it is said', () => program.said().includes(join(data, aside)));
    const session = await until(
      'a session is kept in the new one',
      async () => (await program.api.sessions())[0]?.id,
    );
    expect(isKept(await markNote(program, 'kept'))).toBe(true);
    await program.end('SIGTERM');
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  });

  it('or taken away in mid-session: another session goes on in a new book, and no line is lost', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const board = await hotBoard(folder);
    const program = await startProgram({ data, args: ['--serial', board.path] });
    const first = await until('a session is recorded', async () => (await program.api.sessions())[0]?.id);
    const lines = (await program.api.readings(first)).map(lineOf);
    for (const name of readdirSync(data).filter((file) => file.startsWith('book.sqlite')))
      renameSync(join(data, name), join(data, `moved-${name}`));

    const next = await until('another session goes on', async () => (await program.api.sessions())[0]);
    expect(next).toMatchObject({ startedBecause: 'resumed', continues: first });
    const alarm = await until('it was said', () => program.api.alarm('not-recording'));
    expect(alarm.detail).toContain('moved, deleted or set aside');
    expect(isKept(await markNote(program, 'in-the-new-one'))).toBe(true);
    const [firstLine = 0] = await linesInBook(program);
    // The first book goes on to where it was taken away; the second begins right there.
    expect(firstLine).toBeLessThanOrEqual((lines.at(-1) ?? 0) + 20);
    await expectNoGap(program);
    await expectAllExact(program);
  });
});
