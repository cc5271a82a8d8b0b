import { isIPv6 } from 'node:net';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { optionWords } from '../shared/words/options.ts';

export interface SerialOption {
  readonly path: string;
  readonly baud: number;
}

export interface ListenOption {
  readonly host: string;
  readonly port: number;
}

/** What the command line and the environment ask for. */
export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | { readonly kind: 'ports' }
  | { readonly kind: 'verify'; readonly session: string; readonly dataDir: string }
  | RunCommand;

export interface RunCommand {
  readonly kind: 'run';
  readonly serial: readonly SerialOption[];
  readonly simulate: boolean;
  readonly speed: number;
  readonly listen: ListenOption;
  readonly dataDir: string;
}

/** The command line is wrong; the message says what and what would be right. */
export class OptionError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'OptionError';
  }
}

export const DEFAULT_BAUD = 115_200;
const DEFAULT_LISTEN = '127.0.0.1:7350';
const FASTEST = 1000;

type Env = Readonly<Record<string, string | undefined>>;

/**
 * Reads the command line; where an option is not given, the environment variable of the same meaning counts.
 * @throws OptionError
 */
export function readOptions(args: readonly string[], env: Env): Command {
  const { values, positionals } = parse(args);
  if (values.help === true) return { kind: 'help' };
  if (values.version === true) return { kind: 'version' };
  const dataDir = resolve(values.data ?? env['SOLEPLATE_DATA'] ?? defaultDataDir(process.platform, env));
  const [word, ...more] = positionals;
  switch (word) {
    case undefined:
      return readRun(values, env, dataDir);
    case 'ports':
      if (more.length > 0) throw new OptionError(optionWords.tooMany(more.join(' ')));
      return { kind: 'ports' };
    case 'verify': {
      const [session, ...rest] = more;
      if (session === undefined || rest.length > 0) throw new OptionError(optionWords.verifyWhat);
      return { kind: 'verify', session, dataDir };
    }
    default:
      throw new OptionError(optionWords.unknownCommand(word));
  }
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        serial: { type: 'string', multiple: true },
        simulate: { type: 'boolean' },
        speed: { type: 'string' },
        listen: { type: 'string' },
        data: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
        version: { type: 'boolean' },
      },
    });
  } catch (error) {
    throw new OptionError(optionWords.malformed(error instanceof Error ? error.message : String(error)));
  }
}

type Values = ReturnType<typeof parse>['values'];

function readRun(values: Values, env: Env, dataDir: string): RunCommand {
  const serial = (values.serial ?? listOf(env['SOLEPLATE_SERIAL'])).map(readSerial);
  const simulate = values.simulate ?? readFlag('SOLEPLATE_SIMULATE', env['SOLEPLATE_SIMULATE']);
  const speedText = values.speed ?? env['SOLEPLATE_SPEED'] ?? '1';
  const speed = Number(speedText);
  if (!(speed >= 0.1 && speed <= FASTEST)) throw new OptionError(optionWords.speed(speedText, FASTEST));
  if (simulate && serial.length > 0) throw new OptionError(optionWords.serialAndSimulate);
  if (speed !== 1 && !simulate) throw new OptionError(optionWords.speedWithoutSimulate);
  const twice = serial.find((s, i) => serial.findIndex((o) => o.path === s.path) !== i);
  if (twice !== undefined) throw new OptionError(optionWords.serialTwice(twice.path));
  const listen = readListen(values.listen ?? env['SOLEPLATE_LISTEN'] ?? DEFAULT_LISTEN);
  return { kind: 'run', serial, simulate, speed, listen, dataDir };
}

const listOf = (text: string | undefined): readonly string[] =>
  (text ?? '').split(',').flatMap((part) => (part.trim() === '' ? [] : [part.trim()]));

function readFlag(name: string, text: string | undefined): boolean {
  if (text === undefined || text === '' || text === '0' || text === 'false') return false;
  if (text === '1' || text === 'true') return true;
  throw new OptionError(optionWords.flag(name, text));
}

function readSerial(text: string): SerialOption {
  const match = /^(.+?)(?:@([^@/\\]*))?$/.exec(text);
  const path = match?.[1];
  if (path === undefined) throw new OptionError(optionWords.serial(text));
  const baudText = match?.[2];
  if (baudText === undefined) return { path, baud: DEFAULT_BAUD };
  const baud = Number(baudText);
  if (!/^\d+$/.test(baudText) || baud < 300 || baud > 4_000_000)
    throw new OptionError(optionWords.baud(text));
  return { path, baud };
}

function readListen(text: string): ListenOption {
  const match = /^(?:\[([^\]]+)\]|([^:]*)):(\d{1,5})$/.exec(text);
  const host = match?.[1] ?? match?.[2];
  const port = Number(match?.[3]);
  if (host === undefined || host === '' || !(port <= 65_535)) throw new OptionError(optionWords.listen(text));
  if (match?.[1] !== undefined && !isIPv6(host)) throw new OptionError(optionWords.listen(text));
  return { host, port };
}

/** Where a user's program data belongs on this platform. */
export function defaultDataDir(platform: NodeJS.Platform, env: Env): string {
  const home = homedir();
  if (platform === 'win32') return join(env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'soleplate');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'soleplate');
  return join(env['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'soleplate');
}
