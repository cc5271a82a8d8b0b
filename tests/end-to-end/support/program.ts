import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { Api } from './api.ts';

/** The built program, as its users start it. */

const main = fileURLToPath(new URL('../../../build/daemon/main.js', import.meta.url));

const START_AT_MOST_MS = 30_000;

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

type Env = Readonly<Record<string, string>>;

/** For a program on a disk that is slow to write. */
export const onSlowDisk: Env = {
  NODE_OPTIONS: `--import=${new URL('slow-disk.mjs', import.meta.url)}`,
};

/** The environment of the tests, without what would set options of the program. */
const ownEnv = (more: Env): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('SOLEPLATE_'))),
  ...more,
});

class Child {
  readonly process: ChildProcess;
  readonly ended: Promise<Ended>;
  stdout = '';
  stderr = '';

  constructor(args: readonly string[], env: Env) {
    const child = spawn(process.execPath, [main, ...args], {
      env: ownEnv(env),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.process = child;
    child.stdout.on('data', (bytes: Buffer) => (this.stdout += bytes.toString()));
    child.stderr.on('data', (bytes: Buffer) => (this.stderr += bytes.toString()));
    this.ended = once(child, 'close').then(([code, signal]) => ({
      code: code as number | null,
      signal: signal as NodeJS.Signals | null,
      stdout: this.stdout,
      stderr: this.stderr,
    }));
    onTestFinished(async () => {
      child.kill('SIGKILL');
      await this.ended;
    });
  }
}

/** Runs it to its end, for what ends by itself. */
export const runToEnd = (args: readonly string[], env: Env = {}): Promise<Ended> =>
  new Child(args, env).ended;

/** What comes of checking and replaying a stored session on the command line. */
export const verify = (session: string, data: string): Promise<Ended> =>
  runToEnd(['verify', session, '--data', data]);

export interface Start {
  /** Its data folder; left out where the environment names it. */
  readonly data?: string;
  /** Beside --data and --listen. */
  readonly args?: readonly string[];
  readonly env?: Env;
  /** Any free port unless given. */
  readonly listen?: string;
}

/** A running program. It does not outlive its test. */
export interface Program {
  readonly address: string;
  readonly port: number;
  readonly pid: number;
  readonly api: Api;
  /** All that it has said so far. */
  said(): string;
  /** What it has complained of so far. */
  complained(): string;
  /** Sends it a signal; settles when it has ended. */
  end(signal: NodeJS.Signals): Promise<Ended>;
  /** Sends it a signal and goes on. */
  signal(signal: NodeJS.Signals): void;
}

/** Starts it and waits for the address of its page. Rejects with what it said where it ends instead. */
export async function startProgram({
  data,
  args = [],
  env = {},
  listen = '127.0.0.1:0',
}: Start): Promise<Program> {
  const kept = data === undefined ? [] : ['--data', data];
  const child = new Child(['--listen', listen, ...kept, ...args], env);
  const address = await addressOf(child);
  const { pid = -1 } = child.process;
  return {
    address,
    port: Number(new URL(address).port),
    pid,
    api: new Api(address),
    said: () => child.stdout,
    complained: () => child.stderr,
    end: (signal) => {
      child.process.kill(signal);
      return child.ended;
    },
    signal: (signal) => child.process.kill(signal),
  };
}

function addressOf(child: Child): Promise<string> {
  return new Promise((resolve, reject) => {
    const fail = (why: string): void => reject(new Error(`${why}. It said: ${child.stdout}${child.stderr}`));
    const timer = setTimeout(() => fail('No address was printed in time'), START_AT_MOST_MS);
    const look = (): void => {
      const [address] = /http:\/\/[^\s]+:\d+/.exec(child.stdout) ?? [];
      if (address === undefined) return;
      clearTimeout(timer);
      resolve(address);
    };
    child.process.stdout?.on('data', look);
    child.process.once('close', (code, signal) => {
      clearTimeout(timer);
      fail(`It ended with ${code ?? signal}`);
    });
  });
}
