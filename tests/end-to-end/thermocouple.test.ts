import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { withChecksum } from '../../daemon/probe/wire/checksum.ts';
import { emfUv } from '../../shared/thermocouple/thermocouple.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part, plateNumber, plateText } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const COLD_JUNCTION_C = 24.5;

/** What a board with a type J thermocouple sends that linearises nothing; a plate of 0 degC stands for a broken wire. */
function emfLine(tC: number, line: number): string {
  const hot = emfUv('J', tC) ?? Number.NaN;
  const cold = emfUv('J', COLD_JUNCTION_C) ?? Number.NaN;
  const heat = tC === 0 ? 'f=o' : `uv=${(hot - cold).toFixed(1)} cj=${COLD_JUNCTION_C}`;
  return withChecksum(`p=1 n=${line % 65_536} ${heat}`);
}

it('a board that sends an emf and its cold junction is read by the type that its probe has', async () => {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 22, lineAs: emfLine });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  const page = await openPage(browser, program.address);
  // Near its cold junction every type reads alike.
  await plateNumber(page, 'at room temperature', (f) => f >= 70 && f <= 73);
  await page.goto(`${program.address}/#setup/irons`);
  await page
    .getByRole('group', { name: /Thermocouple/ })
    .getByRole('button', { name: 'J', exact: true })
    .click();
  await until('it is settled', async () => (await program.api.probes())[0]?.thermocouple === 'J');
  await page.goto(`${program.address}/#iron`);
  await board.bring(150);
  await plateNumber(page, 'of 150 °C', (f) => f === 302);
  board.follow(() => 0);
  await until('the broken wire is named', async () => (await plateText(page)) === 'Probe open');
  expect(await part(page, 'hot').count()).toBe(1);
});
