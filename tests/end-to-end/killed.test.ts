import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { isKept } from './support/api.ts';
import { Board, lineOf } from './support/board.ts';
import { commandsInBook } from './support/book.ts';
import { freshFolder } from './support/folder.ts';
import { type Program, startProgram, verify } from './support/program.ts';
import { seeded } from './support/random.ts';
import { until } from './support/until.ts';
import { type Asked, possibleValues, Workload } from './support/workload.ts';

const ROUNDS = 4;
/** For so long before every second kill nothing is asked, ms: then only the seconds force commits. */
const QUIET_MS = 1300;
/** Samples are missing at most for so long before a kill, ms … */
const MISSING_MS = 1000;
/** … or for so long on a machine that is too busy to commit in time, ms. */
const MISSING_WHEN_BUSY_MS = 2500;

const random = seeded(2);
/** In the first round nobody acknowledges what stands. */
const acknowledges = (round: number): boolean => round > 1;

/** What a killed program left behind, as somebody at its API saw it. */
interface Killed {
  readonly session: string;
  readonly work: Workload;
  readonly atMs: number;
  /** The alarm that stood. */
  readonly alarm: AlarmLive;
  readonly before: { readonly label: string; readonly schedule: string };
}

async function workAndKill(program: Program, round: number): Promise<Killed> {
  const { api } = program;
  const session = await until('a session is recorded', () => api.running());
  const before = {
    label: (await api.probes())[0]?.label ?? '',
    schedule: (await api.schedules())[0]?.name ?? '',
  };
  const work = new Workload(api, `round${round}`, random, acknowledges(round));
  const alarm = await until('the plate is over the limit', async () => {
    const now = await api.alarm('over-limit');
    return now?.state === (acknowledges(round) ? 'acknowledged' : 'unacknowledged') ? now : null;
  });
  await delay(random() * 1500);
  if (round % 2 === 0) {
    await work.stop();
    await delay(QUIET_MS + random() * 500);
  }
  const atMs = Date.now();
  await program.end('SIGKILL');
  await work.stop();
  return { session, work, atMs, before, alarm };
}

const keptOf = (asked: readonly Asked[]): readonly string[] =>
  asked.filter((one) => one.kept).map((one) => one.commandId);

async function expectNothingLost(program: Program, data: string, killed: Killed): Promise<void> {
  const { api } = program;
  const { session, work, before } = killed;
  expect(commandsInBook(data, session, 'mark')).toEqual(expect.arrayContaining([...keptOf(work.marks)]));
  const seen = keptOf(work.acknowledgements);
  expect(commandsInBook(data, session, 'acknowledge')).toEqual(expect.arrayContaining([...seen]));
  expect(possibleValues(before.label, work.labels)).toContain((await api.probes())[0]?.label);
  expect(possibleValues(before.schedule, work.schedules)).toContain((await api.schedules())[0]?.name);
  expect(await api.session(session)).toMatchObject({ endedBecause: 'interrupted' });
  expect(keptOf(work.marks).length + seen.length).toBeGreaterThan(0);
}

async function expectGoneOn(program: Program, { session, alarm }: Killed): Promise<string> {
  const { api } = program;
  const next = await until('a session goes on', () => api.running());
  const gone = await until('it is in the book', () => api.session(next));
  expect(gone).toMatchObject({ startedBecause: 'resumed', continues: session });
  const { since, state, peakC } = alarm;
  expect(await api.alarm('over-limit')).toMatchObject({ since, state, peakC });
  return next;
}

/** A command whose answer was lost is sent again, under its id: it is done once. */
async function retryLast(program: Program, data: string, { session, work }: Killed): Promise<void> {
  const last = work.marks.at(-1);
  if (last === undefined) return;
  const answer = await program.api.post(`/api/sessions/${session}/marks`, {
    commandId: last.commandId,
    mark: { kind: 'note', text: last.commandId },
  });
  expect(isKept(answer)).toBe(true);
  const sessions = await program.api.sessions();
  const all = sessions.flatMap(({ id }) => commandsInBook(data, id, 'mark'));
  expect(all.filter((id) => id === last.commandId)).toHaveLength(1);
}

/** For how long before the kill samples are missing, ms. No line before that may be missing. */
async function missingMs(program: Program, board: Board, { session, atMs }: Killed): Promise<number> {
  const lines = (await program.api.readings(session)).map(lineOf);
  const [first = 0] = lines;
  expect(lines).toEqual(lines.map((_, i) => first + i));
  const lost = board.sentAtMs[(lines.at(-1) ?? 0) + 1] ?? atMs;
  return Math.max(0, atMs - lost);
}

describe('a program that is killed in the middle of a session, and started again', () => {
  it('has lost nothing that it acknowledged, and of the samples at most the last second', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const board = new Board(join(folder, 'port'), { plateC: 192 });
    await board.plug();
    const args = ['--serial', board.path];
    let program = await startProgram({ data, args });
    const missing: number[] = [];
    for (let round = 1; round <= ROUNDS; round += 1) {
      const killed = await workAndKill(program, round);
      program = await startProgram({ data, args });
      const next = await expectGoneOn(program, killed);
      await expectNothingLost(program, data, killed);
      await retryLast(program, data, killed);
      missing.push(await missingMs(program, board, killed));
      expect(await program.api.verification(killed.session)).toMatchObject({ exact: true });
      // What stands is not raised again, though the plate is still over the limit.
      const changes = (await program.api.alarmFindings(next, 'over-limit')).map((f) => f.change);
      expect(changes).not.toContain('raised');
    }
    expect(Math.min(...missing)).toBeLessThanOrEqual(MISSING_MS);
    expect(Math.max(...missing)).toBeLessThanOrEqual(MISSING_WHEN_BUSY_MS);
    await program.end('SIGKILL');
    const [last] = await sessionsOnceMore(data, args);
    const checked = await verify(last ?? '', data);
    expect(checked, checked.stdout).toMatchObject({ code: 0 });
  });
});

/** The sessions of a data folder, newest first, whose program has ended. */
async function sessionsOnceMore(data: string, args: readonly string[]): Promise<readonly string[]> {
  const program = await startProgram({ data, args });
  const ids = (await program.api.sessions()).map((s) => s.id);
  await program.end('SIGTERM');
  return ids;
}
