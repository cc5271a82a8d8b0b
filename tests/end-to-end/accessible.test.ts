import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeResults, violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, noNumber, openPage, part, plateNumber } from './support/page.ts';
import { startProgram } from './support/program.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

async function expectNothingInTheWay(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { passes } = await axeResults(page);
    expect(passes.map(({ id }) => id)).toContain('color-contrast');
    expect(await violations(page), colorScheme).toEqual([]);
  }
}

describe('the first page, light and dark, has nothing that keeps anybody out', () => {
  it('with the simulated iron running', async () => {
    const data = join(freshFolder(), 'data');
    const program = await startProgram({ data, args: ['--simulate', '--speed', '50'] });
    const page = await openPage(browser, program.address);
    await part(page, 'simulated').waitFor();
    await plateNumber(page, 'that has come up', (f) => f > 110);
    await expectNothingInTheWay(page);
  });

  it('with a plate over the limit, and with its daemon lost', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 195 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const page = await openPage(browser, program.address);
    await alarmCard(page, 'over-limit').waitFor();
    await expectNothingInTheWay(page);

    await program.end('SIGKILL');
    await noNumber(page);
    await part(page, 'daemon-lost').waitFor();
    await expectNothingInTheWay(page);
  });
});
