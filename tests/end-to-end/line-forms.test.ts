import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cToF } from '../../shared/units/temperature.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { launchBrowser, openPage, painted, part, plateNumber } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** A number as much of Europe writes it. */
const withComma = (value: number): string => value.toFixed(1).replace('.', ',');

/** Battery, plate and button, as `12.3;121,4;0`. */
const inColumns = (tC: number): string => `12.3;${withComma(tC)};0`;

/** As a board for people writes it, with a degree sign that is not ASCII. */
const inWords = (tC: number, line: number): string => `#${line} plate = ${tC.toFixed(1)} \xb0C`;

async function begin(lineAs: (tC: number, line: number) => string): Promise<Program> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 121.4, lineAs });
  await board.plug();
  return startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
}

/** From the first page to the place where its lines are set up. */
async function toSetUp(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('link', { name: 'Devices' }).click();
  await part(page, 'set-up-form').click();
  // What was pressed is gone: whoever has no mouse goes on from here.
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent))
    .toBe('Setting up its lines');
  await part(page, 'tried').getByRole('listitem').nth(5).waitFor();
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

const newestSays = (page: Page) => part(page, 'tried').getByRole('listitem').first();

async function shoot(page: Page, name: string): Promise<void> {
  const folder = process.env['SOLEPLATE_SHOTS'];
  if (folder === undefined) return;
  for (const [width, height] of [
    [1440, 900],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    // Painted once more in the new size.
    await painted(page);
    await part(page, 'line-form').screenshot({ path: join(folder, `forms-${name}-${width}.png`) });
  }
  await page.setViewportSize({ width: 1280, height: 720 });
}

describe('a board that sends columns', () => {
  it('is set up from the first tap to its number on the page; a reload in the middle loses nothing', async () => {
    const program = await begin(inColumns);
    const page = await openPage(browser, program.address);
    await toSetUp(page);
    expect(await newestSays(page).innerText()).toMatch(/12\.3;121,[1-4];0/);
    await shoot(page, 'begin');
    await button(page, 'Columns').click();
    await page.getByText('From the lines it looks like a semicolon.').waitFor();
    expect(await button(page, 'semicolon').getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => part(page, 'form-column').count()).toBe(3);
    await part(page, 'form-problem').getByText('Nothing in it measures.').waitFor();
    await page.getByLabel('What column 2 is').selectOption('t');
    await newestSays(page)
      .getByText(/probe 1: 121\.[1-4] °C$/)
      .waitFor();
    await page.getByLabel('What column 3 is').selectOption('b');
    await page.getByLabel('Probe of column 3').fill('!');
    await part(page, 'form-problem').getByText('1 to 16 letters').waitFor();

    await page.reload();
    await part(page, 'form-problem').getByText('1 to 16 letters').waitFor();
    expect(await page.getByLabel('What column 2 is').inputValue()).toBe('t');
    expect(await page.getByLabel('Probe of column 3').inputValue()).toBe('!');
    await page.getByLabel('Probe of column 3').fill('1');
    await newestSays(page)
      .getByText(/probe 1: 121\.[1-4] °C$/)
      .waitFor();
    await part(page, 'form-unchecked').getByText('150.2 can arrive as 10.2').waitFor();
    await shoot(page, 'columns');
    await expectNothingInTheWay(page);
    expect((await program.api.live()).probes).toEqual([]);

    await part(page, 'drop-form').click();
    await part(page, 'form-in-use').getByText('As pairs').waitFor();
    await button(page, 'Go on with what I dropped').click();
    await part(page, 'save-form').click();
    await part(page, 'said').getByText('Its lines are read this way from now on.').waitFor();
    await part(page, 'form-in-use').getByText('2 temperature (t), probe 1; 3 button (b), probe 1').waitFor();
    await shoot(page, 'saved');
    await page.getByRole('link', { name: 'Iron', exact: true }).click();
    const shown = await plateNumber(page, 'of 121.4 °C', (f) => Math.abs(f - cToF(121.4)) <= 1);
    expect(shown).toBeGreaterThan(240);
  });
});

describe('a board that writes for people', () => {
  it('is read by a pattern: a bad one is refused in words, a good one gives its number; undo takes it back', async () => {
    const program = await begin(inWords);
    const page = await openPage(browser, program.address);
    await toSetUp(page);
    await button(page, 'Something else: a pattern').click();
    const pattern = page.getByLabel('Pattern', { exact: true });
    await pattern.fill('#(?P<n>\\d+) plate = (?P<t>[-0-9.]+');
    await page.getByText('The pattern can’t be read: missing closing )').waitFor();
    expect(await pattern.getAttribute('aria-invalid')).toBe('true');
    await shoot(page, 'refused');
    await part(page, 'save-form').click();
    await part(page, 'said').getByText('Not saved. The pattern can’t be read: missing closing )').waitFor();
    await pattern.fill('plate = (?P<plate>[-0-9.]+).*');
    await page.getByText('No group is called “plate” here.').waitFor();
    await pattern.fill('plate = (?P<t>[-0-9.]+).*');
    await newestSays(page).getByText('the pattern does not match the whole line').waitFor();
    await pattern.fill('#(?P<n>\\d+) plate = (?P<t>[-0-9.]+) .C');
    await newestSays(page)
      .getByText(/probe 1: 121\.[1-4] °C, number \d+$/)
      .waitFor();
    await shoot(page, 'pattern');
    await page.reload();
    await expect.poll(() => pattern.inputValue()).toBe('#(?P<n>\\d+) plate = (?P<t>[-0-9.]+) .C');
    await expectNothingInTheWay(page);
    await part(page, 'save-form').click();
    await part(page, 'said').getByText('Its lines are read this way from now on.').waitFor();
    await until('its number is read', async () => {
      const probe = await program.api.probe();
      return probe?.quality === 'ok' && Math.abs((probe.plateC ?? 0) - 121.4) < 0.5;
    });
    await part(page, 'line-form').getByTestId('undo').click();
    await part(page, 'form-in-use').getByText('As pairs, or as a number alone.').waitFor();
    await until('its lines are not used any more', async () => {
      const [device] = (await program.api.live()).situation.devices;
      return device?.linesAccepted === 0 && device.rejected.length > 0;
    });
  });
});
