import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { alarmCard, launchBrowser, openPage, part } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { shooting } from './support/shots.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const shoot = shooting('suspect', 'reading-now');

const simulated = (thermocouple: string, speed: number) =>
  startProgram({
    data: join(freshFolder(), 'data'),
    args: ['--simulate', '--speed', String(speed), '--thermocouple', thermocouple],
  });

it('swapped wires of a probe are said on the Iron view, by the API and in Setup as the iron warms up', async () => {
  const program = await simulated('K-reversed', 10);
  const page = await openPage(browser, program.address);
  const card = alarmCard(page, 'suspect-probe');
  await card.getByText('A probe may be wired or set wrongly').waitFor({ timeout: 60_000 });
  await card.getByText('as it does with the two wires swapped').waitFor();
  await card.getByText('Treat the plate as hot').waitFor();
  await page.getByText('SIMULATED').first().waitFor();
  await shoot(page, 'card', 'alarm');
  await expectNothingInTheWay(page);
  expect(await program.api.alarm('suspect-probe')).toMatchObject({ detail: 'reversed', priority: 2 });
  await page.goto(`${program.address}/#setup/irons`);
  await part(page, 'probe-suspected').getByText('Swap them at one end').waitFor();
  await shoot(page, 'setup');
  await expectNothingInTheWay(page);
}, 120_000);

it('a type E that is read as a type K is told from what no household iron does, until it is settled right', async () => {
  const program = await simulated('E', 40);
  const page = await openPage(browser, program.address);
  await page.goto(`${program.address}/#setup/irons`);
  await part(page, 'probe-suspected')
    .getByText('where no household iron holds one')
    .waitFor({ timeout: 120_000 });
  expect(await program.api.alarm('suspect-probe')).toMatchObject({ detail: 'type' });
  await page
    .getByRole('group', { name: /Thermocouple/ })
    .getByRole('button', { name: 'E', exact: true })
    .click();
  await part(page, 'probe-suspected').waitFor({ state: 'detached' });
  await until('it stands no more', async () => {
    const state = (await program.api.alarm('suspect-probe'))?.state;
    return state === undefined || state === 'normal' || state === 'returned-unacknowledged';
  });
}, 180_000);
