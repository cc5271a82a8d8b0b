import { join } from 'node:path';
import { pino } from 'pino';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { type Running, startProgram as startHere } from '../../build/daemon/run.js';
import { MachineOnDisk } from '../unit/probe/machine-on-disk.ts';
import { Api, isKept } from './support/api.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part, plateNumber } from './support/page.ts';
import { startProgram, verify } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

describe('the simulated iron', () => {
  it('is labelled SIMULATED on the page, in its title, over the API and in the record', async () => {
    const data = join(freshFolder(), 'data');
    const program = await startProgram({ data, args: ['--simulate', '--speed', '50'] });
    await until('it says so', () => program.said().includes('SIMULATED'));
    const page = await openPage(browser, program.address);
    await part(page, 'simulated').waitFor();
    expect(await part(page, 'simulated').innerText()).toContain('SIMULATED');
    await until('the title says so', async () => (await page.title()).startsWith('SIMULATED'));
    await plateNumber(page, 'that has come up', (f) => f > 110);

    const live = await program.api.live();
    expect(live.situation).toMatchObject({ simulated: true, irons: [{ simulated: true }] });
    expect(live.probes).toMatchObject([{ simulated: true }]);
    const session = await until('it is recorded', async () => (await program.api.sessions())[0]);
    expect(session.simulated).toBe(true);
  });

  it('runs faster when asked: its overheat comes within seconds, is recorded, and folds again exactly', async () => {
    const data = join(freshFolder(), 'data');
    const program = await startProgram({ data, args: ['--simulate', '--speed', '200'] });
    // 950 s into its scenario the thermostat sticks.
    const alarm = await until('the plate passes the limit', () => program.api.alarm('over-limit'), 60_000);
    expect(alarm.peakC).toBeGreaterThan(180);
    const session = await until('it is recorded', () => program.api.running());
    await until(
      'the alarm is in the book',
      async () => (await program.api.alarmFindings(session, 'over-limit')).length > 0,
    );
    await program.end('SIGTERM');
    const checked = await verify(session, data);
    expect(checked, checked.stdout).toMatchObject({ code: 0 });
  });
});

interface Here {
  readonly running: Running;
  readonly api: Api;
  readonly said: string[];
}

/** Starts the program in this process, on a machine that is a folder. */
async function startOn(machine: MachineOnDisk, more: { readonly simulate?: boolean } = {}): Promise<Here> {
  const said: string[] = [];
  const running = await startHere(
    {
      kind: 'run',
      serial: [],
      simulatedPad: false,
      simulate: more.simulate ?? false,
      speed: 1,
      thermocouple: null,
      listen: { host: '127.0.0.1', port: 0 },
      dataDir: join(freshFolder(), 'data'),
    },
    { log: pino({ level: 'silent' }), say: (text) => said.push(text), machine },
  );
  onTestFinished(() => running.stop());
  return { running, api: new Api(running.address), said };
}

function freshMachine(): MachineOnDisk {
  const machine = new MachineOnDisk();
  onTestFinished(() => machine.remove());
  return machine;
}

describe('a start that names no device', () => {
  it('with none there simulates, and says so', async () => {
    const { api, said } = await startOn(freshMachine());
    expect(said.join('\n')).toContain('SIMULATED: no serial device was found');
    await until('it reads', async () => (await api.probe())?.quality === 'ok');
  });

  it('with one there says what it found and waits; the page offers both, and watches the one that is chosen', async () => {
    const machine = freshMachine();
    const board = new Board(join(machine.dev, 'ttyUSB0'), { plateC: 150 });
    await board.plug();
    const { running, api, said } = await startOn(machine);
    expect(said.join('\n')).toContain('ttyUSB0');
    expect(said.join('\n')).toContain('Choose on the page');
    const page = await openPage(browser, running.address);
    await part(page, 'choice').waitFor();
    expect(await part(page, 'simulate').count()).toBe(1);
    // Nothing is watched, simulated or opened before somebody chooses.
    expect(await api.live()).toMatchObject({ probes: [], situation: { simulated: false, devices: [] } });

    await page.getByRole('button', { name: `Watch this one: ${board.path}` }).click();
    await plateNumber(page, 'of the board', (f) => f === 302);
    expect(await part(page, 'choice').count()).toBe(0);
    expect(await part(page, 'simulated').count()).toBe(0);

    // It never passes from a real port to the simulated iron.
    await board.pull();
    await until('the probe is lost', async () => (await api.probe())?.quality === 'device-lost');
    expect((await api.live()).situation).toMatchObject({ simulated: false, choice: null });
    const simulate = await api.post('/api/source', { kind: 'simulate' });
    expect(simulate.status).toBe(409);
  });

  it('and whose user chooses the simulated iron opens no port', async () => {
    const machine = freshMachine();
    const board = new Board(join(machine.dev, 'ttyACM0'), { plateC: 150 });
    await board.plug();
    const { running, api } = await startOn(machine);
    const page = await openPage(browser, running.address);
    await part(page, 'simulate').click();
    await part(page, 'simulated').waitFor();
    await until('it reads', async () => (await api.probe())?.quality === 'ok');
    const live = await api.live();
    expect(live.situation.devices.map((d) => d.id)).toEqual(['simulated']);
    expect(live.probes.every((probe) => probe.simulated)).toBe(true);
    expect(isKept(await api.post('/api/sessions', { iron: live.situation.irons[0]?.id }))).toBe(true);
  });
});
