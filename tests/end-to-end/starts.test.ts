import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { freshFolder } from './support/folder.ts';
import { runToEnd, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

/** Starts that are refused, each with what has to be in its sentence. */
async function expectRefused(starts: readonly (readonly [readonly string[], string])[]): Promise<void> {
  const ended = await Promise.all(starts.map(([args]) => runToEnd(args)));
  for (const [i, { code, stdout, stderr }] of ended.entries()) {
    expect({ code, stdout }, stderr).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(starts[i]?.[1]);
    // A sentence for the user, not a stack.
    expect(stderr).not.toContain('    at ');
  }
}

describe('a command line that is wrong ends with 2, and what would be right', () => {
  it('where an option is unknown or lacks its value', () =>
    expectRefused([
      [['--sereal', '/dev/a'], 'There is no option "--sereal"'],
      [['--speed'], '--speed needs a value'],
      [['fly'], 'The commands are: ports, verify'],
    ]));

  it('where a value can not be right', () =>
    expectRefused([
      [['--simulate', '--speed', 'fast'], 'a number from 0.1 to 1000 is needed'],
      [['--serial', '/dev/a@fast'], 'a whole number from 300 to 4000000'],
      [['--listen', '7350'], 'HOST:PORT is needed, as 127.0.0.1:7350'],
    ]));

  it('where options do not go together', () =>
    expectRefused([
      [['--speed', '5'], 'add --simulate'],
      [['--simulate', '--serial', '/dev/a'], 'exclude each other'],
    ]));

  it('also in the environment, where it is named as what it is there', async () => {
    const ended = await runToEnd([], { SOLEPLATE_SIMULATE: 'perhaps' });
    expect(ended).toMatchObject({ code: 2 });
    expect(ended.stderr).toContain('SOLEPLATE_SIMULATE=perhaps: 1 or 0 is needed');
  });
});

describe('what can be asked without watching', () => {
  it('help names every option with its environment variable', async () => {
    const { code, stdout } = await runToEnd(['--help']);
    expect(code).toBe(0);
    for (const name of ['SERIAL', 'SIMULATE', 'SPEED', 'LISTEN', 'DATA'])
      expect(stdout).toContain(`SOLEPLATE_${name}`);
  });

  it('the version is that of package.json', async () => {
    const file = new URL('../../package.json', import.meta.url);
    const { version } = JSON.parse(readFileSync(file, 'utf8')) as { version: string };
    expect(await runToEnd(['--version'])).toMatchObject({ code: 0, stdout: `${version}\n` });
  });

  it('a session that is not there can not be verified', async () => {
    const data = freshFolder();
    const ended = await runToEnd(['verify', 'nothing', '--data', data]);
    expect(ended).toMatchObject({ code: 1 });
    expect(ended.stdout).toContain(`The book in ${data} has no session nothing.`);
  });
});

describe('a second start', () => {
  it('on the same data folder says so, and ends with 3', async () => {
    const data = join(freshFolder(), 'data');
    await startProgram({ data, args: ['--simulate'] });
    const second = await runToEnd(['--simulate', '--data', data, '--listen', '127.0.0.1:0']);
    expect(second).toMatchObject({ code: 3, stdout: '' });
    expect(second.stderr).toContain(`soleplate is running already with the data folder ${data}`);
  });

  it('on the same port says so, and ends with 3', async () => {
    const folder = freshFolder();
    const first = await startProgram({ data: join(folder, 'one'), args: ['--simulate'] });
    const args = ['--simulate', '--data', join(folder, 'two'), '--listen', `127.0.0.1:${first.port}`];
    const second = await runToEnd(args);
    expect(second).toMatchObject({ code: 3 });
    expect(second.stderr).toContain(`Port ${first.port} on 127.0.0.1 is in use already`);
  });

  it('on a port that another program has says so too', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    onTestFinished(() => void other.close());
    await until('it listens', () => other.listening);
    const { port } = other.address() as AddressInfo;
    const args = ['--simulate', '--data', join(freshFolder(), 'd'), '--listen', `127.0.0.1:${port}`];
    expect(await runToEnd(args)).toMatchObject({ code: 3 });
  });
});

describe('the environment', () => {
  it('starts what the options would: simulated, fast, where it says', async () => {
    const data = join(freshFolder(), 'data');
    const env = { SOLEPLATE_SIMULATE: '1', SOLEPLATE_SPEED: '50', SOLEPLATE_DATA: data };
    const program = await startProgram({ env });
    await until('the simulated plate is read', async () => (await program.api.probe())?.quality === 'ok');
    expect((await program.api.live()).situation.simulated).toBe(true);
    expect(program.said()).toContain(`kept in ${data}`);
  });
});

describe('settings that can not be read', () => {
  const good = {
    format: 1,
    schedules: [],
    irons: [],
    probes: [],
  };

  it.each([
    { what: 'no JSON', text: '{ "format": 1, ', field: 'not JSON' },
    { what: 'an empty file', text: '', field: 'not JSON' },
    { what: 'an unknown field', text: JSON.stringify({ ...good, limits: 1 }), field: 'limits' },
    { what: 'no schedule', text: JSON.stringify(good), field: 'wrong at "schedules"' },
    { what: 'a later format', text: JSON.stringify({ ...good, format: 3 }), field: 'wrong at "format"' },
  ])('$what: ends with 1, names file and field, and leaves the file as it is', async ({ text, field }) => {
    const data = freshFolder();
    const file = join(data, 'settings.json');
    writeFileSync(file, text);
    const ended = await runToEnd(['--simulate', '--data', data, '--listen', '127.0.0.1:0']);
    expect(ended).toMatchObject({ code: 1, stdout: '' });
    expect(ended.stderr).toContain(file);
    expect(ended.stderr).toContain(field);
    expect(ended.stderr).not.toContain('    at ');
    expect(readFileSync(file, 'utf8')).toBe(text);
  });

  it('a field deep inside is named by its path', async () => {
    const data = freshFolder();
    const first = await startProgram({ data, args: ['--simulate'] });
    await until('the settings are written', () => readFileSync(join(data, 'settings.json'), 'utf8'));
    await first.end('SIGTERM');
    const file = join(data, 'settings.json');
    const text = readFileSync(file, 'utf8').replace(/"fabricLimitC": [0-9.]+/, '"fabricLimitC": "hot"');
    writeFileSync(file, text);
    const ended = await runToEnd(['--simulate', '--data', data, '--listen', '127.0.0.1:0']);
    expect(ended).toMatchObject({ code: 1 });
    expect(ended.stderr).toContain('schedules.0.fabricLimitC');
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
});

describe('a data folder that can not be one', () => {
  it('is said, with what to do, and ends with 1', async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, 'file'), '');
    const args = ['--simulate', '--data', join(folder, 'file', 'deeper'), '--listen', '127.0.0.1:0'];
    const ended = await runToEnd(args);
    expect(ended).toMatchObject({ code: 1 });
    expect(ended.stderr).toContain("can't be used");
    expect(ended.stderr).toContain('--data');
  });

  it('settings that are a folder are not passed over', async () => {
    const data = freshFolder();
    mkdirSync(join(data, 'settings.json'));
    const ended = await runToEnd(['--simulate', '--data', data, '--listen', '127.0.0.1:0']);
    expect(ended).toMatchObject({ code: 1 });
    expect(ended.stderr).toContain(join(data, 'settings.json'));
  });
});
