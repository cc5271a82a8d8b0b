import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { airAnswerSchema, cementListSchema } from '../../shared/messages/cure.ts';
import { fToC } from '../../shared/units/temperature.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

/** Cements and the shop's air in Setup, before the program itself. */

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

async function begin(): Promise<Program> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 22 });
  await board.plug();
  return startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
}

const read = async (program: Program, path: string): Promise<unknown> =>
  (await fetch(`${program.address}${path}`)).json();
const cementsOf = async (program: Program) =>
  cementListSchema.parse(await read(program, '/api/cements')).cements;
const airOf = async (program: Program) => airAnswerSchema.parse(await read(program, '/api/air'));

async function setUp(program: Program, where: string): Promise<Page> {
  const page = await openPage(browser, program.address);
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#setup/${where}`);
  return page;
}

describe('cements in Setup', () => {
  it('examples are there, unconfirmed; one is changed on two pages, and both changes are kept', async () => {
    const program = await begin();
    const [example] = await cementsOf(program);
    expect(example?.kind).toBe('water-borne');
    const where = `cements/${example?.id}`;
    const [one, other] = [await setUp(program, where), await setUp(program, where)];
    await part(one, 'cement-unconfirmed').waitFor();
    await one.getByRole('textbox', { name: 'Lowest temperature' }).fill('55,5');
    await one.getByRole('textbox', { name: 'Batch' }).fill('D-200');
    await other.getByRole('textbox', { name: 'Document' }).fill('Demo cement sheet (invented)');
    await other.getByRole('textbox', { name: 'Page' }).fill('2');
    await other.getByRole('textbox', { name: 'Batch' }).fill('D-300');
    await part(other, 'save').click();
    await part(other, 'confirmed').waitFor();
    await part(one, 'conflict').getByText('yours “D-200”').waitFor();
    await part(one, 'save-both').click();
    await part(one, 'cement-said').getByText('Saved as version 3').waitFor();
    const saved = (await cementsOf(program)).find(({ id }) => id === example?.id);
    expect(saved).toMatchObject({
      version: 3,
      batch: 'D-200',
      source: { page: '2' },
      stages: example?.stages,
    });
    expect(saved?.airLimits.lowC).toBeCloseTo(fToC(55.5), 9);
  }, 60_000);

  it('a new one is entered, and is there for others', async () => {
    const program = await begin();
    const page = await setUp(program, 'cements');
    await part(page, 'new-cement').click();
    await page.getByRole('textbox', { name: 'Name' }).fill('Flap cement');
    await page.getByRole('button', { name: 'solvent-borne' }).click();
    await page.getByRole('textbox', { name: 'From, ready for the iron' }).fill('45');
    await page.getByRole('textbox', { name: 'Temperature', exact: true }).fill('73');
    await page.getByRole('textbox', { name: 'Relative humidity' }).fill('50');
    await part(page, 'save').click();
    await part(page, 'cement-said').getByText('Saved as version 1').waitFor();
    const other = await setUp(program, 'cements');
    await other.getByRole('heading', { name: 'Flap cement' }).waitFor();
    const made = (await cementsOf(program)).find(({ name }) => name === 'Flap cement');
    expect(made).toMatchObject({ version: 1, flammable: true, stages: [{ fromS: 2700, toS: 2700 }] });
  }, 60_000);
});

describe('shop air in Setup', () => {
  it('typed in has its dew point and what is amiss; a forecast stands, and goes when it is cleared', async () => {
    const program = await begin();
    const page = await setUp(program, 'air');
    await page.getByText('Nothing is known of the shop’s air').waitFor();
    await page.locator('#air-temperature').fill('41');
    await page.locator('#air-humidity').fill('92,5');
    await page.keyboard.press('Enter');
    const now = part(page, 'air-now');
    await now.getByText('41 °F, 93 % humidity').waitFor();
    await now.getByText(/the air is .* over it/).waitFor();
    const concerns = part(page, 'air-concerns');
    await concerns.getByText('Too cold').waitFor();
    await concerns.getByText('Too near the dew point').waitFor();
    await part(page, 'air-history').getByText('Dots: typed in.').first().waitFor();
    await page.locator('#forecast-1-temperature').fill('68');
    await part(page, 'keep-forecast').click();
    await page.getByText('Kept: the forecast stands until').waitFor();
    await until('it is forecast', async () => (await airOf(program)).forecast.length === 1);
    expect((await airOf(program)).forecast[0]).toMatchObject({ airC: 20, rhPct: null });
    await part(page, 'clear-forecast').click();
    await page.getByText('Cleared: no forecast stands.').waitFor();
    expect((await airOf(program)).forecast).toEqual([]);
  }, 60_000);
});
