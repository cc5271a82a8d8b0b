import { pino } from 'pino';
import { optionWords } from '../shared/words/options.ts';
import { startWords } from '../shared/words/start.ts';
import { OptionError, type RunCommand, readLogLevel, readOptions } from './options.ts';
import { VERSION } from './version.ts';

/** The program's door: reads the command line, runs what it asks for, and ends with the exit code that it deserves. */

const BAD_OPTIONS = 2;
/** A shutdown that takes longer than this is cut short, ms. */
const STOP_AT_MOST_MS = 1900;

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

async function main(): Promise<void> {
  const command = readOptions(process.argv.slice(2), process.env);
  switch (command.kind) {
    case 'help':
      say(optionWords.help);
      return;
    case 'version':
      say(VERSION);
      return;
    case 'ports':
      say(await (await import('./commands/ports.ts')).listPorts());
      return;
    case 'verify': {
      const { verifyCommand } = await import('./commands/verify.ts');
      process.exitCode = await verifyCommand(command, say);
      return;
    }
    case 'run':
      await run(command);
  }
}

async function run(command: RunCommand): Promise<void> {
  const level = readLogLevel(process.env);
  const told = stopSignal();
  const { startProgram } = await import('./run.ts');
  const log = pino({ level }, pino.destination(2));
  const start = startProgram(command, { log, say });
  // Nothing is acknowledged before the start is over, so one that is told to stop has nothing to end.
  const running = await Promise.race([start, told]);
  if (running === undefined) process.exit(0);
  await told;
  await running.stop();
  process.exit(0);
}

/** Settles at the first signal to stop; should the program not have ended in time then, it is cut short. */
function stopSignal(): Promise<undefined> {
  return new Promise((resolve) => {
    let stopping = false;
    const stop = (): void => {
      if (stopping) return;
      stopping = true;
      say(startWords.stopping);
      setTimeout(() => process.exit(1), STOP_AT_MOST_MS);
      resolve(undefined);
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
}

function fail(error: unknown): never {
  if (error instanceof OptionError) {
    process.stderr.write(`${error.message}\n`);
    process.exit(BAD_OPTIONS);
  }
  if (error instanceof Error && 'exitCode' in error && typeof error.exitCode === 'number') {
    process.stderr.write(`${error.message}\n`);
    process.exit(error.exitCode);
  }
  process.stderr.write(`${startWords.unexpected}\n${error instanceof Error ? error.stack : String(error)}\n`);
  process.exit(1);
}

// Whoever read the output may be gone (a pipe closed, a terminal shut): that is no reason to stop watching.
process.stdout.on('error', () => undefined);
process.stderr.on('error', () => undefined);
main().catch(fail);
