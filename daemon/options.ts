import { isIPv6 } from 'node:net';
import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type ThermocoupleType, thermocoupleTypes } from '../shared/thermocouple/types.ts';
import { optionWords } from '../shared/words/options.ts';

export interface SerialOption {
  readonly path: string;
  readonly baud: number;
}

export interface ListenOption {
  readonly host: string;
  readonly port: number;
}

export interface SimulatedThermocouple {
  readonly type: ThermocoupleType;
  readonly reversed: boolean;
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
  /** The simulated probe is in a check pad, on which the iron is parked between passes. */
  readonly simulatedPad: boolean;
  readonly speed: number;
  /** The thermocouple whose emf the simulated iron sends; null: it sends temperatures. */
  readonly thermocouple: SimulatedThermocouple | null;
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
 * Reads the command line; where an option is not given, the environment variable of the same meaning counts (an empty
 * one is as good as none). What is said of the device on the command line counts before all that the environment says.
 * @throws OptionError
 */
export function readOptions(args: readonly string[], env: Env): Command {
  const { values, positionals } = parse(args);
  if (values.help === true) return { kind: 'help' };
  if (values.version === true) return { kind: 'version' };
  const [word, ...more] = positionals;
  switch (word) {
    case undefined:
      return readRun(values, env);
    case 'ports':
      if (more.length > 0) throw new OptionError(optionWords.tooMany(more.join(' ')));
      takesOnly(word, values, []);
      return { kind: 'ports' };
    case 'verify': {
      const [session, ...rest] = more;
      if (session === undefined || rest.length > 0) throw new OptionError(optionWords.verifyWhat);
      takesOnly(word, values, ['data']);
      return { kind: 'verify', session, dataDir: readDataDir(values, env) };
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
        'simulate-pad': { type: 'boolean' },
        speed: { type: 'string' },
        thermocouple: { type: 'string' },
        listen: { type: 'string' },
        data: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
        version: { type: 'boolean' },
      },
    });
  } catch (error) {
    throw new OptionError(malformed(error instanceof Error ? error.message : String(error)));
  }
}

/** Node's own words lead astray here ("place it behind --"). */
function malformed(why: string): string {
  const [, name] = /'(--?[A-Za-z0-9][^' ]*)/.exec(why) ?? [];
  if (name === undefined) return optionWords.malformed(why);
  if (why.startsWith('Unknown option')) return optionWords.unknownOption(name);
  return why.includes('does not take an argument')
    ? optionWords.noValue(name)
    : optionWords.valueMissing(name);
}

type Values = ReturnType<typeof parse>['values'];

function takesOnly(command: string, values: Values, taken: readonly string[]): void {
  const other = Object.keys(values).find((name) => !taken.includes(name));
  if (other !== undefined) throw new OptionError(optionWords.notFor(other, command));
}

/** What was given of one option, with the words in which it was said. */
interface Given {
  readonly text: string;
  readonly said: string;
}

function given(values: Values, env: Env, option: 'speed' | 'thermocouple' | 'listen'): Given | null {
  const value = values[option];
  return value === undefined ? fromEnv(env, option) : { text: value, said: `--${option} ${value}` };
}

function fromEnv(env: Env, option: string): Given | null {
  const name = `SOLEPLATE_${option.toUpperCase().replace('-', '_')}`;
  const value = env[name];
  return value === undefined || value === '' ? null : { text: value, said: `${name}=${value}` };
}

function readRun(values: Values, env: Env): RunCommand {
  const devices = readDevices(values, env);
  const { simulate } = devices;
  const speed = readSpeed(given(values, env, 'speed'), { simulate, fromEnv: values.speed === undefined });
  const thermocouple = readThermocouple(given(values, env, 'thermocouple'), {
    simulate,
    fromEnv: values.thermocouple === undefined,
  });
  const listen = readListen(given(values, env, 'listen'));
  return { kind: 'run', ...devices, speed, thermocouple, listen, dataDir: readDataDir(values, env) };
}

function readDevices(values: Values, env: Env): Pick<RunCommand, 'serial' | 'simulate' | 'simulatedPad'> {
  const pad = values['simulate-pad'];
  const said = [values.serial, values.simulate, pad].some((one) => one !== undefined);
  const others: Env = said ? {} : env;
  const named = values.serial?.map((text) => ({ text, said: `--serial ${text}` }));
  const serial = (named ?? listOf(fromEnv(others, 'serial'))).map(readSerial);
  const simulatedPad = pad ?? readFlag(fromEnv(others, 'simulate-pad'));
  const simulate = simulatedPad || (values.simulate ?? readFlag(fromEnv(others, 'simulate')));
  if (simulate && serial.length > 0) throw new OptionError(optionWords.serialAndSimulate);
  const twice = serial.find((s, i) => serial.findIndex((o) => o.path === s.path) !== i);
  if (twice !== undefined) throw new OptionError(optionWords.serialTwice(twice.path));
  return { serial, simulate, simulatedPad };
}

const listOf = (list: Given | null): readonly Given[] =>
  (list?.text ?? '')
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => ({ text: part, said: `SOLEPLATE_SERIAL=${part}` }));

function readFlag(flag: Given | null): boolean {
  if (flag === null || flag.text === '0' || flag.text === 'false') return false;
  if (flag.text === '1' || flag.text === 'true') return true;
  throw new OptionError(optionWords.flag(flag.said));
}

/** A speed in the environment waits for a start that simulates; one that is asked for without that is a mistake. */
function readSpeed(
  speed: Given | null,
  { simulate, fromEnv: waits }: { readonly simulate: boolean; readonly fromEnv: boolean },
): number {
  if (speed === null) return 1;
  const value = speed.text.trim() === '' ? Number.NaN : Number(speed.text);
  if (!(value >= 0.1 && value <= FASTEST)) throw new OptionError(optionWords.speed(speed.said, FASTEST));
  if (simulate || value === 1) return value;
  if (waits) return 1;
  throw new OptionError(optionWords.speedWithoutSimulate(speed.said));
}

/** One in the environment waits for a start that simulates, as a speed does. */
function readThermocouple(
  thermocouple: Given | null,
  { simulate, fromEnv: waits }: { readonly simulate: boolean; readonly fromEnv: boolean },
): SimulatedThermocouple | null {
  if (thermocouple === null) return null;
  const [, letter, reversed] = /^([A-Z])(-reversed)?$/.exec(thermocouple.text) ?? [];
  const type = thermocoupleTypes.find((one) => one === letter);
  if (type === undefined)
    throw new OptionError(optionWords.thermocouple(thermocouple.said, thermocoupleTypes));
  if (simulate) return { type, reversed: reversed !== undefined };
  if (waits) return null;
  throw new OptionError(optionWords.thermocoupleWithoutSimulate(thermocouple.said));
}

function readSerial({ text, said }: Given): SerialOption {
  const match = /^([^@].*?)(?:@([^@/\\]*))?$/.exec(text);
  const path = match?.[1];
  if (path === undefined) throw new OptionError(optionWords.serial(said));
  const baudText = match?.[2];
  if (baudText === undefined) return { path, baud: DEFAULT_BAUD };
  const baud = Number(baudText);
  if (!/^\d+$/.test(baudText) || baud < 300 || baud > 4_000_000)
    throw new OptionError(optionWords.baud(said));
  return { path, baud };
}

function readListen(listen: Given | null): ListenOption {
  const { text, said } = listen ?? { text: DEFAULT_LISTEN, said: '' };
  const match = /^(?:\[([^\]]+)\]|([^:]*)):(\d{1,5})$/.exec(text);
  const host = match?.[1] ?? match?.[2];
  const port = Number(match?.[3]);
  if (host === undefined || host === '' || !(port <= 65_535)) throw new OptionError(optionWords.listen(said));
  if (match?.[1] !== undefined && !isIPv6(host)) throw new OptionError(optionWords.listen(said));
  return { host, port };
}

function readDataDir(values: Values, env: Env): string {
  if (values.data === '') throw new OptionError(optionWords.data);
  return resolve(values.data ?? fromEnv(env, 'data')?.text ?? defaultDataDir(process.platform, env));
}

const logLevels = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'];

/**
 * How much the program logs: SOLEPLATE_LOG, warnings and errors unless set.
 * @throws OptionError
 */
export function readLogLevel(env: Env): string {
  const level = fromEnv(env, 'log');
  if (level === null) return 'warn';
  if (!logLevels.includes(level.text)) throw new OptionError(optionWords.log(level.said, logLevels));
  return level.text;
}

/** Where a user's program data belongs on this platform. */
export function defaultDataDir(platform: NodeJS.Platform, env: Env): string {
  const home = homedir();
  // A folder that is empty or not absolute is to be passed over (XDG Base Directory Specification).
  const folder = (name: string): string | null => {
    const path = env[name] ?? '';
    return isAbsolute(path) ? path : null;
  };
  if (platform === 'win32')
    return join(folder('LOCALAPPDATA') ?? join(home, 'AppData', 'Local'), 'soleplate');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'soleplate');
  return join(folder('XDG_DATA_HOME') ?? join(home, '.local', 'share'), 'soleplate');
}
