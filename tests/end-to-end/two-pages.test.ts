import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, openPage } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const press = (page: Page) =>
  alarmCard(page, 'over-limit')
    .getByRole('button', { name: /^Acknowledge/ })
    .click();

it('two pages acknowledge the same alarm: it is acknowledged once, and neither is told that anything went wrong', async () => {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 120 });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  const first = await openPage(browser, program.address);
  const second = await openPage(browser, program.address);
  await board.bring(197);
  for (const page of [first, second]) await alarmCard(page, 'over-limit', 'unacknowledged').waitFor();

  // What the second page says is held on its way until the first has been heard.
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await second.route('**/acknowledge', async (route) => {
    await held;
    await route.continue();
  });
  await press(second);
  await press(first);
  for (const page of [first, second]) await alarmCard(page, 'over-limit', 'acknowledged').waitFor();
  const refused = second.waitForResponse('**/acknowledge');
  letGo();
  expect((await refused).status()).toBe(409);
  await until(
    'nothing is on its way any more',
    async () => (await second.getByTestId('unsent').count()) === 0,
  );
  expect(await second.getByTestId('notice').count()).toBe(0);

  const session = await until('a session runs', () => program.api.running());
  const found = await program.api.alarmFindings(session, 'over-limit');
  expect(found.map(({ change }) => change)).toEqual(['raised', 'acknowledged']);
});
