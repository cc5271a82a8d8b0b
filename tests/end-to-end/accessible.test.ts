import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, noNumber, openPage, part, plateNumber } from './support/page.ts';
import { startProgram } from './support/program.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

interface Found {
  /** What it looked at and found right. */
  readonly passes: readonly { readonly id: string }[];
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
}

/** What axe finds wrong with the page as it stands, a line each. */
async function violations(page: Page): Promise<readonly string[]> {
  // The page's security policy refuses a script element; a script that is evaluated is not one.
  await page.evaluate(axe);
  const found = await page.evaluate(() => {
    const { axe: checker } = globalThis as unknown as { axe: { run(): Promise<Found> } };
    return checker.run();
  });
  expect(found.passes.map(({ id }) => id)).toContain('color-contrast');
  return found.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary = '' }) => `${id}: ${help}\n${html}\n${failureSummary}`),
  );
}

async function expectNothingInTheWay(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
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
