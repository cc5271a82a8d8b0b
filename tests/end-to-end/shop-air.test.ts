import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { airAnswerSchema } from '../../shared/messages/cure.ts';
import { Board, checked } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

/** The shop's air as probes tell it, over a real pseudo-terminal. */

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const airOf = async ({ address }: Program) =>
  airAnswerSchema.parse(await (await fetch(`${address}/api/air`)).json());

it('of two probes one is heard; what no air is like is said and not taken; which one tells it is chosen, for good', async () => {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 22 });
  await board.plug();
  const data = join(folder, 'data');
  const program = await startProgram({ data, args: ['--serial', board.path] });
  await until('the plate is read', async () => (await program.api.probe())?.quality === 'ok');
  // What each sensor says from now on, by its name.
  const says: Record<string, string> = { air: 'ta=21.0 rh=56.0' };
  const telling = setInterval(() => {
    for (const [name, air] of Object.entries(says)) board.write(`${checked(`p=${name} ${air}`)}\n`);
  }, 400);
  try {
    const page = await openPage(browser, `${program.address}/#setup/air`);
    const now = part(page, 'air-now');
    await now.getByText('70 °F, 56 % humidity').waitFor();
    says['window'] = 'ta=17.0 rh=71.0';
    const probes = part(page, 'air-probes');
    await probes.getByText(/air: 70 °F, 56 % humidity; taken for the air of the shop/).waitFor();
    await probes.getByText(/window: 63 °F, 71 % humidity; only shown here/).waitFor();

    // A sensor that breaks, in a line that tells a plate too.
    says['air'] = 'ta=21.0 rh=134';
    says['1'] = 't=22.5 rh=134';
    const notes = part(page, 'air-notes');
    await notes.getByText(/\/air told humidity 134 % at \d\d:\d\d: not taken/).waitFor();
    await notes.getByText('Relative humidity lies between 0 % and 100 %').first().waitFor();
    await notes.getByText(/Clocks go by 70 °F/).waitFor();
    await page.goto(`${program.address}/#bench`);
    await part(page, 'bench-air')
      .getByText(/\/air told humidity 134 %/)
      .waitFor();
    const live = await program.api.live();
    expect(live.situation.devices.flatMap(({ rejected }) => rejected)).toEqual([]);
    expect((await program.api.probe())?.quality).toBe('ok');
    expect((await airOf(program)).history.filter(({ rhPct }) => (rhPct ?? 0) > 100)).toEqual([]);

    await page.goto(`${program.address}/#setup/air`);
    await part(page, 'air-probes')
      .getByRole('button', { name: /\/window$/ })
      .click();
    await part(page, 'air-now').getByText('63 °F, 71 % humidity').waitFor();
    expect((await airOf(program)).now?.probe).toMatch(/\/window$/);
    await program.end('SIGKILL');
    const again = await startProgram({ data, args: ['--serial', board.path] });
    await until('the chosen one is heard', async () =>
      (await airOf(again)).probes.some(({ probe, heard }) => heard && probe.endsWith('/window')),
    );
    const { chosen, probes: known } = await airOf(again);
    expect(chosen).toMatch(/\/window$/);
    expect(known.filter(({ heard }) => heard)).toHaveLength(1);
  } finally {
    clearInterval(telling);
  }
}, 120_000);
