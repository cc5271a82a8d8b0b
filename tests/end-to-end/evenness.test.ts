import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ironEvennessSchema } from '../../shared/messages/evenness.ts';
import { cToF } from '../../shared/units/temperature.ts';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const PLATE_C = 121;
const inF = (c: number): string => String(Math.round(cToF(c)));

const evennessOf = async ({ address }: Program) =>
  ironEvennessSchema.parse(await (await fetch(`${address}/api/irons/iron-1/evenness`)).json());

/** Two marks typed: a chart that gives advice for the initial shrink. */
async function chart({ api }: Program): Promise<void> {
  for (const [mark, meanC] of [
    [3, 115],
    [6, 175],
  ] as const) {
    const body = { mark, meanC, peakC: meanC + 2, troughC: meanC - 2 };
    expect((await api.post('/api/irons/iron-1/dial/points', body)).status).toBe(200);
  }
}

const markIn = (text: string): number => Number(/Set the dial to about ([\d.]+) for/.exec(text)?.[1]);

it('spots are typed one after the other; limits and advice count the hottest, and it can be forgotten', async () => {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: PLATE_C });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
  await chart(program);
  const page = await openPage(browser, program.address);
  const start = page.getByRole('button', { name: 'Start recording' });
  await start.or(page.getByRole('button', { name: 'Stop recording' })).waitFor();
  if (await start.isVisible()) await start.click();
  await page.getByRole('button', { name: /^initial shrink/ }).click();
  const advice = part(page, 'dial-line');
  const before = await until('it advises', async () => {
    const text = await advice.innerText();
    return Number.isFinite(markIn(text)) ? text : null;
  });
  expect(await part(page, 'evenness').count()).toBe(0);

  await page.evaluate(() => {
    location.hash = '#setup/irons';
  });
  const plate = part(page, 'evenness-part');
  await plate.getByText('Not looked at yet').waitFor();
  await plate.getByText('Type spot readings').click();
  await plate.getByRole('button', { name: 'beside the probe', pressed: true }).waitFor();
  await plate.getByLabel('What it shows, beside the probe').fill('hot');
  await plate.getByRole('button', { name: 'Keep this reading' }).click();
  await plate.getByText('Write a plate temperature').waitFor();
  await plate.getByLabel('What it shows, beside the probe').fill(inF(PLATE_C));
  await plate.getByLabel('Thermometer may be off').fill('2');
  await page.reload();
  // What was typed survives a reload.
  await expect
    .poll(() => plate.getByLabel('What it shows, beside the probe').inputValue())
    .toBe(inF(PLATE_C));
  // A spot is held against what the probe reads meanwhile: that takes some seconds of it.
  await until(
    'the probe tells a slope',
    async () => typeof (await program.api.probe())?.slopeKPerS === 'number',
  );
  await plate.getByRole('button', { name: 'Keep this reading' }).click();
  await part(page, 'evenness-said').getByText('Kept: beside the probe. Next: toe.').waitFor();

  // Absurd: refused in words, and nothing typed is lost.
  await plate.getByLabel('What it shows, toe').fill('540');
  await plate.getByRole('button', { name: 'Keep this reading' }).click();
  await part(page, 'evenness-said').getByText('right unit').waitFor();
  expect(await plate.getByLabel('What it shows, toe').inputValue()).toBe('540');
  await plate.getByLabel('What it shows, toe').fill(inF(PLATE_C + 5));
  await plate.getByRole('button', { name: 'Keep this reading' }).click();
  await part(page, 'evenness-said').getByText('Kept: toe. Next: heel.').waitFor();
  await part(page, 'evenness-counted').waitFor();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violations(page), colorScheme).toEqual([]);
  }
  const known = await evennessOf(program);
  expect(known.typed).toMatchObject({ hottest: 'toe', coldest: 'probe' });
  expect(Math.abs(known.limitsOverK - 5)).toBeLessThan(0.8);

  await page.evaluate(() => {
    location.hash = '';
  });
  await part(page, 'evenness')
    .getByText(/the toe \d+ °F hotter than the probe’s place \(±\d+ °F\)/)
    .waitFor();
  await part(page, 'evenness')
    .getByText(/Limits count \d+ °F on top/)
    .waitFor();
  const after = await until('the advice has changed', async () => {
    const text = await advice.innerText();
    return text === before ? null : text;
  });
  expect(markIn(after) < markIn(before) || after.includes('can’t do this stage')).toBe(true);
  await part(page, 'trust').locator('summary').click();
  await part(page, 'trust-over').waitFor();
  expect(await violations(page)).toEqual([]);

  await page.evaluate(() => {
    location.hash = '#setup/irons';
  });
  await plate.getByRole('button', { name: 'Take out: toe' }).click();
  await part(page, 'evenness-said').getByText('Taken out: toe.').waitFor();
  await plate.getByRole('button', { name: 'Forget all of it' }).click();
  await plate.getByRole('button', { name: 'Yes, forget all readings' }).click();
  await plate.getByText('Not looked at yet').waitFor();
  await until('all is forgotten', async () => (await evennessOf(program)).spots.length === 0);
  expect(await evennessOf(program)).toMatchObject({ spots: [], limitsOverK: 0, adviceOverK: 0 });
  await page.evaluate(() => {
    location.hash = '';
  });
  await until('the advice is as before', async () => (await advice.innerText()) === before);
});
