import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { shooting } from './support/shots.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const shoot = shooting('work-settings', 'setup');

async function begin(hash: string): Promise<{ readonly program: Program; readonly page: Page }> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'));
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  await until('the probe is heard', () => program.api.probe());
  return { program, page: await openPage(browser, `${program.address}#setup/${hash}`) };
}

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

const newest = async (program: Program) =>
  (await program.api.schedules()).find((one) => one.id === 'shipped') ?? expect.unreachable();

describe('what is settled of the work', () => {
  it('rest limits and shrink table: saved, wrong ones said beside the field, put back by undo', async () => {
    const { program, page } = await begin('schedules');
    await field(page, 'Rest limit, tack').fill('0');
    await part(page, 'own-shrink').click();
    await field(page, 'Shrinks by, point 2').fill('4');
    await button(page, 'Save as version 2').click();
    await page.getByText('Write a number from 0.5 s to 120 s.').waitFor();
    await page.getByText('must not fall from point to point: 5 % or more').waitFor();
    await shoot(page, 'wrong');
    expect(await violations(page)).toEqual([]);

    await field(page, 'Rest limit, tack').fill('3,5');
    await field(page, 'Shrinks by, point 2').fill('9,5');
    await part(page, 'add-shrink').click();
    await field(page, 'Plate at, point 3').fill('365');
    await field(page, 'Shrinks by, point 3').fill('10,5');
    await field(page, 'Where the points come from').fill('demo manual (invented), page 12');
    await page.reload();
    await shoot(page, 'typed');
    await button(page, 'Save as version 2').click();
    await page.getByText('Saved as version 2').waitFor();
    const saved = await newest(program);
    expect(saved.stages.find((one) => one.id === 'tack')?.restLimitS).toBe(3.5);
    expect(saved.shrink?.points.map(({ percent }) => percent)).toEqual([5, 9.5, 10.5]);

    // Another change leaves both as they are.
    await field(page, 'Fabric').fill('another cloth');
    await button(page, 'Save as version 3').click();
    await page.getByText('Saved as version 3').waitFor();
    expect(await newest(program)).toMatchObject({ version: 3, stages: saved.stages, shrink: saved.shrink });
    await button(page, 'Undo: put back version 2').click();
    await page.getByText('Saved as version 4').waitFor();
    expect(await newest(program)).toMatchObject({ version: 4, shrink: saved.shrink });
    await expectNothingInTheWay(page);
  }, 120_000);

  it('the sole plate of an iron, with a decimal comma, undone and emptied', async () => {
    const { program, page } = await begin('irons');
    const soleOf = async () => (await program.api.irons())[0]?.soleCm2 ?? null;
    const sole = field(page, 'Area of its sole plate');
    await sole.fill('1');
    await sole.press('Enter');
    await page.getByText('Write a number from 2 to 1000 cm².').waitFor();
    await sole.fill('132,5');
    await sole.press('Enter');
    await page.getByText('Its sole plate has 132.5 cm² now.').waitFor();
    expect(await soleOf()).toBe(132.5);
    await shoot(page, 'sole', 'iron-card');
    expect(await violations(page)).toEqual([]);
    await part(page, 'undo').click();
    await page.getByText('Undone.').waitFor();
    expect(await soleOf()).toBeNull();
    await sole.fill('140');
    await sole.press('Enter');
    await page.getByText('Its sole plate has 140 cm² now.').waitFor();
    const name = field(page, 'Name of the iron');
    await name.fill('Small iron');
    await name.press('Enter');
    await page.getByText('Called “Small iron” now.').waitFor();
    expect(await soleOf()).toBe(140);
    await sole.fill('');
    await sole.press('Enter');
    await page.getByText('is not told now').waitFor();
    expect(await soleOf()).toBeNull();
  }, 90_000);

  it('after how long a hot iron left alone is told of: reminder before alarm, undone', async () => {
    const { page } = await begin('alone');
    await part(page, 'alone').getByText('use a timed outlet').waitFor();
    const reminder = field(page, 'Reminder after');
    await reminder.fill('20');
    await reminder.press('Enter');
    await page.getByText('must come before the alarm, which comes after 15 min').waitFor();
    await reminder.fill('2,5');
    await reminder.press('Enter');
    await page.getByText('The reminder comes after 2.5 min now.').waitFor();
    await shoot(page, 'alone');
    expect(await violations(page)).toEqual([]);
    await page.reload();
    await expect.poll(() => reminder.inputValue()).toBe('2.5');
    const alarm = field(page, 'Alarm after');
    await alarm.fill('12');
    await alarm.press('Enter');
    await page.getByText('The alarm comes after 12 min now.').waitFor();
    await part(page, 'undo').click();
    await expect.poll(() => alarm.inputValue()).toBe('15');
    await expectNothingInTheWay(page);
  }, 90_000);

  it('stages: moved and taken away by keys, and the focus stays with what was pressed or what it was in', async () => {
    const { page } = await begin('schedules');
    const focused = () =>
      page.evaluate(() => {
        const at = document.activeElement;
        return at?.getAttribute('aria-label') ?? at?.textContent;
      });
    await page.getByRole('button', { name: 'Move tack down' }).focus();
    const stages = await page.getByTestId('stage').count();
    for (let place = 2; place < stages; place += 1) {
      await page.keyboard.press('Enter');
      await expect
        .poll(() =>
          page
            .getByTestId('stage')
            .nth(place - 1)
            .getByRole('textbox', { name: /^Stage/ })
            .inputValue(),
        )
        .toBe('tack');
      await expect.poll(focused).toBe('Move tack down');
    }
    await page.keyboard.press('Enter');
    await expect.poll(focused).toBe('tack');
    await page.getByRole('button', { name: 'Remove tack' }).press('Enter');
    await expect.poll(focused).toBe('Heat stages');
  });
});
