import { mkdir } from 'node:fs/promises';
import { setTimeout as delay } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Logger } from 'pino';
import { startWords } from '../shared/words/start.ts';
import type { OpenedBook } from './book/book.ts';
import { takeLock } from './book/lock.ts';
import { threadedBook } from './book/thread/threaded-book.ts';
import { threadedReader } from './book/thread/threaded-reader.ts';
import { monotonicClock, SteppedClock } from './clock.ts';
import { newId } from './ids.ts';
import type { RunCommand } from './options.ts';
import { type Machine, thisMachine } from './probe/port/machine.ts';
import { readSettings, SettingsUnreadable, writeSettings } from './settings/file.ts';
import { SettingsKeeper } from './settings/keeper.ts';
import { addSources, makeSource, type SourcesSetup } from './sources.ts';
import { VERSION } from './version.ts';
import { useForms } from './watching/device-desk.ts';
import { Journal } from './watching/drying/journal.ts';
import { Keeper } from './watching/keeper.ts';
import { Program } from './watching/program.ts';
import { ProgramDesk } from './watching/program-desk.ts';
import { readShop } from './watching/shop/read-shop.ts';
import { isLoopback } from './web/access/host.ts';
import { ListenFailure } from './web/listen.ts';
import { startWeb, type Web } from './web/web.ts';

/** A start that can't be: the sentence for the user, and the exit code. */
export class CannotStart extends Error {
  readonly exitCode: number;

  constructor(message: string, exitCode: number) {
    super(message);
    this.name = 'CannotStart';
    this.exitCode = exitCode;
  }
}

const ALREADY_RUNNING = 3;
/** Watching begins after so long, ms, whether the book is open by then or not. */
const BOOK_AT_MOST_MS = 2500;
const pageDir = fileURLToPath(new URL('../dashboard', import.meta.url));

export interface Running {
  readonly address: string;
  /** Writes what is pending, closes the ports and ends. */
  stop(): Promise<void>;
}

export interface StartSetup {
  readonly log: Logger;
  readonly say: (text: string) => void;
  /** Where ports are looked for. */
  readonly machine?: Machine;
  /** Which iron is simulated and what is done with it; the demo's unless given. */
  readonly simulated?: SourcesSetup['simulated'];
}

/** Starts watching as the command line asks. Rejects with `CannotStart`. */
export async function startProgram(command: RunCommand, setup: StartSetup): Promise<Running> {
  const release = await takeFolder(command.dataDir, setup.log);
  try {
    return await startIn(command, setup, release);
  } catch (error) {
    release();
    throw error;
  }
}

async function startIn(command: RunCommand, setup: StartSetup, release: () => void): Promise<Running> {
  const { log, say, machine = thisMachine, simulated = {} } = setup;
  const { dataDir } = command;
  const clock = command.speed === 1 ? monotonicClock() : new SteppedClock();
  const settings = new SettingsKeeper(await settingsOf(dataDir), (s) => writeSettings(dataDir, s));
  const reader = threadedReader({ folder: dataDir });
  const book = threadedBook({ folder: dataDir, nowUtcMs: () => Date.now() });
  const keeper = new Keeper(
    book,
    (opened) => {
      goOn(program, desk, opened, say);
      const { shop } = program.bench;
      const drying = program.drying.keeper;
      // Nothing waits for it.
      void readShop({ reader, shop, drying, ending: ending.signal, complain });
    },
    (keeping) => program.setKeeping(keeping),
  );
  const ending = new AbortController();
  const complain = (message: string, error: unknown): void => log.error({ err: error }, message);
  const epoch = newId();
  const journal = new Journal({ book: keeper, complain });
  const originUtcMs = Date.now() - clock.nowMs();
  const program: Program = new Program({
    clock,
    originUtcMs,
    utcNowMs: command.speed === 1 ? () => Date.now() : () => originUtcMs + clock.nowMs(),
    byWallClock: command.speed === 1,
    version: VERSION,
    epoch,
    viewOnly: !isLoopback(command.listen.host),
    simulated: () => program.devices.sources.some((s) => s.device.simulated),
    settings,
    keep: (commit) => keeper.commit(commit),
    keepInShop: (entry) => journal.keep(entry),
    complain,
  });
  const sources = { command, clock, machine, say, simulated };
  const desk: ProgramDesk = new ProgramDesk({
    program,
    reader,
    book,
    sourceFor: (choice) => makeSource(choice, sources),
    ready: () => begun,
  });
  const web = await listen(command, { desk, epoch, log });
  sayWhere(command, web, say);
  const begun = begin(program, keeper, sources);
  await begun;
  return {
    address: web.address,
    stop: async () => {
      ending.abort();
      await program.stop();
      await journal.close();
      await Promise.all([keeper.close(), reader.close(), web.close()]);
      release();
    },
  };
}

/** The book comes first, for what broke off to be gone on with; but watching doesn't wait for a slow disk. */
async function begin(program: Program, keeper: Keeper, sources: SourcesSetup): Promise<void> {
  await Promise.race([keeper.open(), delay(BOOK_AT_MOST_MS, undefined, { ref: false })]);
  await useForms(program.devices, program.options.settings);
  await addSources(program, sources);
  program.run();
}

function sayWhere({ listen: { host }, dataDir }: RunCommand, web: Web, say: StartSetup['say']): void {
  say(startWords.page(web.address));
  if (!isLoopback(host)) say(startWords.viewOnly(host));
  say(startWords.data(dataDir));
}

async function takeFolder(dir: string, log: Logger): Promise<() => void> {
  try {
    await mkdir(dir, { recursive: true });
  } catch (error) {
    throw new CannotStart(startWords.cantUseFolder(dir, String(error)), 1);
  }
  const lock = takeLock(dir);
  switch (lock.kind) {
    case 'taken':
      return lock.release;
    case 'held':
      throw new CannotStart(startWords.alreadyRunning(dir), ALREADY_RUNNING);
    case 'unavailable':
      // Watching must go on where nothing can be written; that nothing is kept is an alarm of its own.
      log.warn(lock.message);
      return () => undefined;
  }
}

async function settingsOf(dir: string) {
  try {
    return await readSettings(dir);
  } catch (error) {
    if (error instanceof SettingsUnreadable) throw new CannotStart(error.message, 1);
    throw error;
  }
}

async function listen(
  { listen: at }: RunCommand,
  parts: { readonly desk: ProgramDesk; readonly epoch: string; readonly log: Logger },
): Promise<Web> {
  try {
    return await startWeb({
      ...parts,
      listen: at,
      pageDir,
      version: VERSION,
      nowMs: () => performance.now(),
    });
  } catch (error) {
    if (!(error instanceof ListenFailure)) throw error;
    throw new CannotStart(error.message, error.failure === 'in-use' ? ALREADY_RUNNING : 1);
  }
}

/** Goes on with what broke off when the program last ended, the newest session of each iron. */
function goOn(program: Program, desk: ProgramDesk, opened: OpenedBook, say: (text: string) => void): void {
  if (opened.setAside !== null) say(startWords.setAside(opened.setAside));
  for (const { id, commandIds } of opened.interrupted) {
    for (const commandId of commandIds) desk.log.remember({ commandId, session: id, kept: true });
  }
  program.goOnFrom(opened.interrupted);
}
