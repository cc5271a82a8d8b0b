import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  defaultDataDir,
  OptionError,
  type RunCommand,
  readLogLevel,
  readOptions,
} from '../../../daemon/options.ts';

type Env = Readonly<Record<string, string>>;

function run(text: string, env: Env = {}): RunCommand {
  const command = readOptions(wordsOf(text), env);
  if (command.kind !== 'run') throw new Error(`it reads as ${command.kind}`);
  return command;
}

const wordsOf = (text: string): string[] => (text === '' ? [] : text.split(' '));

function refusal(words: readonly string[], env: Env = {}): string {
  try {
    readOptions(words, env);
  } catch (error) {
    if (error instanceof OptionError) return error.message;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('a start', () => {
  it('without options listens on this machine only, and neither simulates nor names a device', () => {
    expect(run('')).toMatchObject({
      serial: [],
      simulate: false,
      speed: 1,
      listen: { host: '127.0.0.1', port: 7350 },
    });
  });

  it('takes several devices, each at its own speed', () => {
    expect(run('--serial /dev/ttyUSB0 --serial COM3@9600').serial).toEqual([
      { path: '/dev/ttyUSB0', baud: 115_200 },
      { path: 'COM3', baud: 9600 },
    ]);
  });

  it('takes a path that holds an "@" ahead of its last part', () => {
    expect(run('--serial /dev/by@id/board').serial).toEqual([{ path: '/dev/by@id/board', baud: 115_200 }]);
  });

  it('lets the simulated iron send the emf of a thermocouple, and no real one', () => {
    expect(run('--simulate').thermocouple).toBeNull();
    expect(run('--simulate --thermocouple J').thermocouple).toEqual({ type: 'J', reversed: false });
    const env = { SOLEPLATE_THERMOCOUPLE: 'K-reversed' };
    expect(run('--simulate', env).thermocouple).toEqual({ type: 'K', reversed: true });
    // It waits for a start that simulates.
    expect(run('', env).thermocouple).toBeNull();
    expect(refusal(['--thermocouple', 'K'])).toContain('add --simulate');
    for (const wrong of ['X', 'k', 'K-', 'reversed', ''])
      expect(refusal(['--simulate', '--thermocouple', wrong])).toContain('one of K, J, T, E, N is needed');
  });

  it('simulates a check pad where it is asked for, never beside a real device', () => {
    expect(run('--simulate-pad')).toMatchObject({ simulate: true, simulatedPad: true });
    expect(run('--simulate')).toMatchObject({ simulate: true, simulatedPad: false });
    expect(run('', { SOLEPLATE_SIMULATE_PAD: '1' })).toMatchObject({ simulate: true, simulatedPad: true });
    expect(() => run('--simulate-pad --serial /dev/a')).toThrow(/exclude each other/);
  });

  it.each([
    ['0.1', 0.1],
    ['50', 50],
    ['1000', 1000],
  ])('simulates at speed %s', (text, speed) => {
    expect(run(`--simulate --speed ${text}`)).toMatchObject({ simulate: true, speed });
  });

  it.each([
    ['127.0.0.1:0', { host: '127.0.0.1', port: 0 }],
    ['localhost:8080', { host: 'localhost', port: 8080 }],
    ['[::1]:65535', { host: '::1', port: 65_535 }],
    ['0.0.0.0:7350', { host: '0.0.0.0', port: 7350 }],
  ])('listens on %s', (text, listen) => {
    expect(run(`--listen ${text}`).listen).toEqual(listen);
  });

  it('keeps its data where it is told to', () => {
    expect(run('--data here').dataDir).toBe(resolve('here'));
  });
});

describe('the environment', () => {
  it('says the same as the options do', () => {
    const env = {
      SOLEPLATE_SERIAL: '/dev/a, /dev/b@9600,',
      SOLEPLATE_LISTEN: '[::1]:1',
      SOLEPLATE_DATA: '/d',
    };
    expect(run('', env)).toMatchObject({
      serial: [
        { path: '/dev/a', baud: 115_200 },
        { path: '/dev/b', baud: 9600 },
      ],
      listen: { host: '::1', port: 1 },
      dataDir: resolve('/d'),
    });
    expect(run('', { SOLEPLATE_SIMULATE: '1', SOLEPLATE_SPEED: '10' })).toMatchObject({
      simulate: true,
      speed: 10,
    });
  });

  it('comes after the command line', () => {
    const env = { SOLEPLATE_LISTEN: '127.0.0.1:1', SOLEPLATE_DATA: '/d' };
    expect(run('--listen 127.0.0.1:2 --data /e', env)).toMatchObject({
      listen: { port: 2 },
      dataDir: resolve('/e'),
    });
  });

  it('has no say in what is watched where the command line says it', () => {
    expect(run('--simulate', { SOLEPLATE_SERIAL: '/dev/a' })).toMatchObject({ simulate: true, serial: [] });
    const simulates = { SOLEPLATE_SIMULATE: '1', SOLEPLATE_SPEED: '10' };
    expect(run('--serial /dev/a', simulates)).toMatchObject({ simulate: false, speed: 1 });
  });

  it('keeps a speed for the starts that simulate', () => {
    expect(run('', { SOLEPLATE_SPEED: '10' }).speed).toBe(1);
    expect(run('--simulate', { SOLEPLATE_SPEED: '10' }).speed).toBe(10);
  });

  it('says nothing where it is empty', () => {
    const names = ['SERIAL', 'SIMULATE', 'SPEED', 'LISTEN', 'DATA'];
    const empty = Object.fromEntries(names.map((name) => [`SOLEPLATE_${name}`, '']));
    expect(run('', empty)).toEqual(run(''));
  });
});

const name = (words: string, ...parts: string[]) => ({ words: wordsOf(words), parts });

describe('a mistake is named, with what would be right', () => {
  it.each([
    name('--sereal /dev/a', 'no option "--sereal"', '--help'),
    name('-x', 'no option "-x"'),
    name('--speed', '--speed needs a value'),
    name('--speed --simulate', '--speed needs a value'),
    name('--simulate=3', '--simulate takes no value'),
    name('--simulate --speed fast', '--speed fast', 'from 0.1 to 1000'),
    name('--simulate --speed 0', '--speed 0', 'from 0.1 to 1000'),
    name('--simulate --speed 1001', 'from 0.1 to 1000'),
    name('--simulate --speed=', 'from 0.1 to 1000'),
    name('--simulate --speed NaN', 'from 0.1 to 1000'),
    name('--speed 5', '--speed 5', 'add --simulate'),
    name('--simulate --serial /dev/a', 'exclude each other'),
    name('--serial /dev/a --serial /dev/a@9600', '/dev/a', 'twice'),
    name('--serial=', '/dev/ttyUSB0 or COM3'),
    name('--serial @9600', '--serial @9600', '/dev/ttyUSB0 or COM3'),
    name('--serial /dev/a@', 'from 300 to 4000000'),
    name('--serial /dev/a@fast', '/dev/a@fast', 'from 300 to 4000000'),
    name('--serial /dev/a@12.5', 'from 300 to 4000000'),
    name('--serial /dev/a@299', 'from 300 to 4000000'),
    name('--listen 7350', '--listen 7350', '127.0.0.1:7350'),
    name('--listen :7350', '127.0.0.1:7350'),
    name('--listen 127.0.0.1:65536', 'from 0 to 65535'),
    name('--listen ::1:7350', '[::1]:7350'),
    name('--listen [here]:7350', '[::1]:7350'),
    name('--data=', '--data: a folder is needed'),
    name('watch', '"watch" is no command', 'ports, verify'),
    name('ports all', '"all" is too much'),
    name('ports --speed 5', '--speed is not for the command "ports"'),
    name('verify', 'takes one session'),
    name('verify a b', 'takes one session'),
    name('verify a --simulate', '--simulate is not for the command "verify"'),
  ])('$words', ({ words, parts }) => {
    const message = refusal(words);
    for (const part of parts) expect(message).toContain(part);
  });

  it.each([
    ['SOLEPLATE_SIMULATE', 'yes', '1 or 0'],
    ['SOLEPLATE_SPEED', 'fast', 'from 0.1 to 1000'],
    ['SOLEPLATE_LISTEN', '7350', '127.0.0.1:7350'],
    ['SOLEPLATE_SERIAL', '/dev/a@fast', 'from 300 to 4000000'],
  ])('in the environment by its own name: %s=%s', (variable, value, right) => {
    const message = refusal([], { [variable]: value });
    expect(message).toContain(`${variable}=${value}`);
    expect(message).toContain(right);
  });
});

describe('how much is logged', () => {
  it('is said in the environment: warnings and errors unless it says otherwise', () => {
    expect(readLogLevel({})).toBe('warn');
    expect(readLogLevel({ SOLEPLATE_LOG: 'debug' })).toBe('debug');
    expect(() => readLogLevel({ SOLEPLATE_LOG: 'loud' })).toThrow('SOLEPLATE_LOG=loud: one of trace');
  });
});

describe('what ends by itself', () => {
  it('help and version come before everything else', () => {
    expect(readOptions(['--help', '--version', 'ports'], {})).toEqual({ kind: 'help' });
    expect(readOptions(['-h'], {})).toEqual({ kind: 'help' });
    expect(readOptions(['--version'], { SOLEPLATE_SPEED: 'wrong' })).toEqual({ kind: 'version' });
  });

  it('the ports, and a session to verify', () => {
    expect(readOptions(['ports'], {})).toEqual({ kind: 'ports' });
    const command = readOptions(['verify', 'abc', '--data', '/d'], {});
    expect(command).toEqual({ kind: 'verify', session: 'abc', dataDir: resolve('/d') });
  });
});

describe('the data folder of a user', () => {
  const home = homedir();

  it.each([
    ['linux', {}, join(home, '.local', 'share', 'soleplate')],
    ['linux', { XDG_DATA_HOME: '/x' }, join('/x', 'soleplate')],
    ['linux', { XDG_DATA_HOME: '' }, join(home, '.local', 'share', 'soleplate')],
    ['linux', { XDG_DATA_HOME: 'relative' }, join(home, '.local', 'share', 'soleplate')],
    ['darwin', {}, join(home, 'Library', 'Application Support', 'soleplate')],
    ['win32', { LOCALAPPDATA: '/x' }, join('/x', 'soleplate')],
    ['win32', {}, join(home, 'AppData', 'Local', 'soleplate')],
  ] as const)('on %s with %j', (platform, env, dir) => {
    expect(defaultDataDir(platform, env)).toBe(dir);
  });
});
