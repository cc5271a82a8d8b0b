import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fToC } from '../../shared/units/temperature.ts';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, openPage, part, plateNumber } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The program with a board on a pseudo-terminal, its plate at `plateC`. */
async function begin(plateC = 22): Promise<{ readonly program: Program; readonly board: Board }> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
  return { program, board };
}

const newest = async (program: Program) =>
  (await program.api.schedules()).find((one) => one.id === 'shipped') ?? expect.unreachable();

async function toPart(page: Page, name: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#setup/${name}`);
  await page.locator(`[data-testid="setup"][data-part="${name}"]`).waitFor();
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

describe('a heat schedule', () => {
  it('is unconfirmed on every screen until manual and page are entered; a change can be undone', async () => {
    const { program } = await begin();
    const page = await openPage(browser, program.address);
    await part(page, 'unconfirmed').getByRole('link').click();
    await part(page, 'schedule-unconfirmed').waitFor();
    expect(await part(page, 'plate-now').innerText()).toMatch(/^\d+ °F/);

    await page.getByLabel('Manual').fill('Demo covering manual (invented)');
    await button(page, 'Save as version 2').click();
    await part(page, 'schedule-said').getByText('one field needs a look').waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('shipped-page');
    await page.getByLabel('Page', { exact: true }).fill('41');
    await button(page, 'Save as version 2').click();
    await part(page, 'confirmed').getByText('From “Demo covering manual (invented)”, page 41.').waitFor();
    await part(page, 'unconfirmed').waitFor({ state: 'detached' });
    expect(await newest(program)).toMatchObject({ version: 2, source: { page: '41' } });
    const iron = (await program.api.live()).situation.irons[0];
    expect(iron?.schedule.version).toBe(2);

    await part(page, 'undo').click();
    await part(page, 'schedule-unconfirmed').waitFor();
    expect(await newest(program)).toMatchObject({ version: 3, source: null });
  });

  it('takes a decimal comma in either unit, and says beside a field what would be right', async () => {
    const { program } = await begin();
    const page = await openPage(browser, program.address);
    await toPart(page, 'schedules');
    const limit = page.getByRole('textbox', { name: 'Fabric limit' });
    await limit.fill('37x');
    await limit.blur();
    await page.getByText('Write a number in °F, for example 250 or 250,5.').waitFor();
    expect(await limit.getAttribute('aria-invalid')).toBe('true');
    await limit.fill('374,5');
    await button(page, 'Save as version 2').click();
    await part(page, 'schedule-said').getByText('Saved as version 2').waitFor();
    const saved = await newest(program);
    expect(saved.fabricLimitC).toBeCloseTo(fToC(374.5), 9);
    expect(saved.cementLimitC).toBeNull();

    await button(page, '°C Celsius').click();
    await expect.poll(() => limit.inputValue()).toBe('190.3');
    await page.getByLabel('Cement limit').fill('162,5');
    await button(page, 'Save as version 3').click();
    await part(page, 'schedule-said').getByText('Saved as version 3').waitFor();
    // What was not touched is the very same number, though another unit rounds it on the screen.
    expect(await newest(program)).toMatchObject({
      fabricLimitC: saved.fabricLimitC,
      cementLimitC: 162.5,
      stages: saved.stages,
    });
  });

  it('changed on two pages: nothing typed is lost, the other version is shown, both are kept', async () => {
    const { program } = await begin();
    const one = await openPage(browser, program.address);
    const other = await openPage(browser, program.address);
    await toPart(one, 'schedules');
    await toPart(other, 'schedules');
    await one.getByRole('textbox', { name: 'Fabric limit' }).fill('370');
    await one.getByLabel('High, tack').fill('262');
    await other.getByLabel('Manual').fill('Demo manual');
    await other.getByLabel('Page', { exact: true }).fill('7');
    await other.getByRole('textbox', { name: 'Fabric limit' }).fill('365');
    await button(other, 'Save as version 2').click();
    await part(other, 'confirmed').waitFor();

    const conflict = part(one, 'conflict');
    await conflict.getByText('there is a version 2').waitFor();
    expect(await one.getByRole('textbox', { name: 'Fabric limit' }).inputValue()).toBe('370');
    const text = (await conflict.innerText()).replace(/\s+/g, ' ');
    expect(text).toContain('Manual: “Demo manual” (was nothing)');
    expect(text).toContain('Fabric limit: the other 365 °F, yours 370 °F');
    // It outlives even a reload of the page.
    await one.reload();
    await conflict.waitFor();
    await button(one, 'Take the other’s: Fabric limit').click();
    await button(one, 'Save both changes as version 3').click();
    await until('both changes are saved', async () => (await newest(program)).version === 3);
    await part(one, 'confirmed').getByText('Demo manual').waitFor();
    const saved = await newest(program);
    expect(saved).toMatchObject({ version: 3, source: { manual: 'Demo manual', page: '7' } });
    expect(saved.fabricLimitC).toBeCloseTo(fToC(365), 9);
    expect(saved.stages[0]?.highC).toBeCloseTo(fToC(262), 9);
  });

  it('typed while the daemon is gone stays, is said to be unsaved, and is saved afterwards', async () => {
    const { program } = await begin();
    const page = await openPage(browser, program.address);
    await toPart(page, 'schedules');
    await page.getByRole('textbox', { name: 'Fabric limit' }).fill('371');
    await page.route('**/api/schedules/shipped', (route) => route.abort());
    await button(page, 'Save as version 2').click();
    await part(page, 'schedule-said').getByText('What you typed stays here').waitFor();
    expect(await page.getByRole('link', { name: /Setup/ }).first().innerText()).toContain('not saved');
    await page.unroute('**/api/schedules/shipped');
    await button(page, 'Save as version 2').click();
    await part(page, 'schedule-said').getByText('Saved as version 2').waitFor();
  });
});

describe('irons and probes', () => {
  it('a probe moves to another iron with one tap, and back with another', async () => {
    const folder = freshFolder();
    const toe = new Board(join(folder, 'toe'), { plateC: 22 });
    const heel = new Board(join(folder, 'heel'), { plateC: 24 });
    await Promise.all([toe.plug(), heel.plug()]);
    const program = await startProgram({
      data: join(folder, 'data'),
      args: ['--serial', toe.path, '--serial', heel.path],
    });
    await until('both are read', async () => (await program.api.live()).probes.length === 2);
    const page = await openPage(browser, program.address);
    await toPart(page, 'irons');
    const card = page.locator(`[data-testid="probe-card"][data-id="${heel.path}/1"]`);
    const seat = async () =>
      (await program.api.irons()).map((iron) => iron.probes.length).toSorted((a, b) => a - b);
    expect(await seat()).toEqual([1, 1]);
    const elsewhere = card.getByRole('group', { name: 'Sits on' }).locator('[aria-pressed="false"]').first();
    const target = await elsewhere.innerText();
    await elsewhere.click();
    await card.getByText(`probe 1 sits on ${target} now.`).waitFor();
    expect(await seat()).toEqual([2]);
    await card.getByTestId('undo').click();
    await card.getByText('Undone.').waitFor();
    expect(await seat()).toEqual([1, 1]);

    await card.getByLabel('Mounting ±').fill('2,7');
    await card.getByLabel('Mounting ±').press('Enter');
    await card.getByText('The allowance for its mounting is ±3 °F now.').waitFor();
    const probe = (await program.api.probes()).find((one) => one.id === `${heel.path}/1`);
    expect(probe?.mountingK).toBeCloseTo(1.5, 9);
  });

  it('a plate that stands at 71 "°C" is asked about, and one tap makes it Fahrenheit', async () => {
    const { program } = await begin(71);
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of 160 °F', (f) => f === 160);
    await part(page, 'unit-question').getByText('the device counts in Fahrenheit').waitFor();
    await button(page, 'It counts in °F').click();
    await plateNumber(page, 'of 71 °F', (f) => f === 71);
    await part(page, 'unit-question').waitFor({ state: 'detached' });
    expect((await program.api.probes())[0]?.unit).toBe('degF');
  });

  it('a device is told of with its rejected lines, and gets a name', async () => {
    const { program, board } = await begin();
    board.write('p=1 n=5 t=20.0*00\n');
    const page = await openPage(browser, program.address);
    await toPart(page, 'devices');
    const card = part(page, 'device-card');
    await card.getByText('checksum does not match').waitFor();
    expect(await card.innerText()).toContain('p=1 n=5 t=20.0*00');
    await card.getByLabel('Your name for it').fill('left handle');
    await card.getByLabel('Your name for it').press('Enter');
    await card.getByRole('heading', { name: 'left handle: connected' }).waitFor();
  });
});

describe('the pedal', () => {
  it('is taught by pressing it, and acknowledges from then on, on any view and after a reload', async () => {
    const { program, board } = await begin();
    const page = await openPage(browser, program.address);
    await toPart(page, 'screen');
    await button(page, 'Teach the pedal').click();
    await part(page, 'pedal').getByText('Press the pedal now.').waitFor();
    await page.keyboard.press('Enter');
    await part(page, 'pedal').getByText('“Enter” works this page itself').waitFor();
    await page.keyboard.press('PageDown');
    await part(page, 'pedal').getByText('The pedal is the key “Page Down”').waitFor();
    await page.keyboard.press('PageDown');
    await part(page, 'pedal').getByText('The pedal works.').waitFor();
    await page.reload();
    await toPart(page, 'schedules');
    await page.getByLabel('Manual').focus();
    await board.bring(200);
    await alarmCard(page, 'over-limit', 'unacknowledged').waitFor();
    await page.keyboard.press('PageDown');
    await until('somebody has seen it', async () => {
      const first = (await program.api.live()).alarms.filter((one) => one.state === 'acknowledged');
      return first.length > 0;
    });
  });
});

describe('by keyboard alone', () => {
  it('from the first page to a confirmed schedule', async () => {
    const { program } = await begin();
    const page = await openPage(browser, program.address);
    await part(page, 'plate').waitFor();
    await tabTo(page, 'a[href="#setup"]');
    await page.keyboard.press('Enter');
    await page.locator('[data-part="schedules"]').waitFor();
    await tabTo(page, '#shipped-manual');
    await page.keyboard.type('Demo manual');
    await tabTo(page, '#shipped-page');
    await page.keyboard.type('9');
    await tabTo(page, '[data-testid="save"]');
    await page.keyboard.press('Space');
    await part(page, 'confirmed').waitFor();
    expect(await newest(program)).toMatchObject({ source: { manual: 'Demo manual', page: '9' } });
    await tabTo(page, 'a[href="#setup/irons"]');
    await page.keyboard.press('Enter');
    await page.locator('[data-part="irons"]').waitFor();
    await tabTo(page, '[data-testid="iron-card"] input');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('Big iron');
    await page.keyboard.press('Enter');
    await part(page, 'said').getByText('Called “Big iron” now.').waitFor();
    expect((await program.api.irons())[0]?.name).toBe('Big iron');
  });
});

/** Presses Tab until what is named has the focus; it has to be in sight then. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate((wanted) => {
      const focused = document.activeElement;
      if (focused === null || !focused.matches(wanted)) return null;
      const { left, top, width, height } = focused.getBoundingClientRect();
      const over = document.elementFromPoint(left + width / 2, top + height / 2);
      return over !== null && (focused.contains(over) || over.contains(focused));
    }, selector);
    if (there === null) continue;
    expect(there, `${selector} is in sight when it has the focus`).toBe(true);
    return;
  }
  expect.fail(`120 times Tab did not lead to ${selector}`);
}

describe('every part of setup', () => {
  it.each([
    ['large and light', { width: 1440, height: 900 }, 'Light'],
    ['small and dark', { width: 320, height: 640 }, 'Dark'],
  ] as const)('%s: passes axe-core, never scrolls sideways, has large targets', async (_, viewport, look) => {
    const { program } = await begin();
    const page = await openPage(browser, program.address);
    await page.setViewportSize(viewport);
    await toPart(page, 'screen');
    await button(page, look).click();
    await expect
      .poll(() => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor))
      .toBe(look === 'Dark' ? 'rgb(14, 17, 19)' : 'rgb(232, 235, 230)');
    for (const name of ['schedules', 'irons', 'devices', 'screen']) {
      await toPart(page, name);
      if (name === 'schedules') await page.getByRole('textbox', { name: 'Fabric limit' }).fill('hot');
      if (name === 'schedules') await page.getByRole('textbox', { name: 'Fabric limit' }).blur();
      expect([name, await violations(page)]).toEqual([name, []]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      ).toBeLessThanOrEqual(0);
      for (const target of await page
        .locator('button:visible, summary:visible, a:visible, input:visible')
        .all()) {
        const box = await target.boundingBox();
        expect(Math.min(box?.width ?? 0, box?.height ?? 0), await target.innerText()).toBeGreaterThanOrEqual(
          48,
        );
      }
    }
  });
});
