import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ironDialSchema } from '../../shared/messages/dial.ts';
import { cToF } from '../../shared/units/temperature.ts';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram, verify } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const MEAN_C = 140;
const HALF_C = 5;
const [UP, DOWN] = [14, 28];

/** A thermostat in a hurry: 10 K up in 1.4 s and down in 2.8 s, in straight lines, at ten lines a second. */
const cycling =
  (from: number) =>
  (line: number): number => {
    const at = (line - from) % (UP + DOWN);
    const share = at < UP ? at / UP : 1 - (at - UP) / DOWN;
    return MEAN_C - HALF_C + 2 * HALF_C * share;
  };

const dialOf = async ({ address }: Program) =>
  ironDialSchema.parse(await (await fetch(`${address}/api/irons/iron-1/dial`)).json());

/** What axe finds wrong, in light and in dark; and that nothing scrolls sideways at 320 px. */
async function looksRight(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violations(page), colorScheme).toEqual([]);
  }
  const before = page.viewportSize() ?? { width: 1280, height: 720 };
  await page.setViewportSize({ width: 320, height: 640 });
  // What is drawn follows the size of the window a frame later.
  await until(
    'nothing scrolls sideways',
    async () => (await page.evaluate(() => document.documentElement.scrollWidth)) <= 320,
  );
  await page.setViewportSize(before);
}

describe('the dial of an iron', () => {
  it('is told by touch, charted by itself, and advised on; a typed reading makes it a chart', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 22 });
    await board.plug();
    const data = join(folder, 'data');
    const program = await startProgram({ data, args: ['--serial', board.path] });
    await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
    // So quick a thermostat leaves room for advice only with a probe that is known to be quick.
    const probe = (await program.api.probes())[0] ?? expect.unreachable();
    const lag = { tauS: 0.1, standardS: 0.02, measuredAt: '2026-01-01T08:00:00Z' };
    const { id, label, thermocouple, unit } = probe;
    const settled = { label, thermocouple, unit, lag };
    const put = await program.api.put(`/api/probes/${encodeURIComponent(id)}`, settled);
    expect(put.status).toBe(200);
    const page = await openPage(browser, program.address);
    await page.getByRole('button', { name: 'Start recording' }).click();
    await page.getByRole('button', { name: 'on its rest' }).click();
    await page.getByLabel('Dial at another mark').fill('4x');
    await page.getByRole('button', { name: 'Say it' }).click();
    await page.getByText('Write a number from 0 to 1000').waitFor();
    await page.getByLabel('Dial at another mark').fill('4,5');
    await page.getByRole('button', { name: 'Say it' }).click();
    await page.getByRole('button', { name: 'Dial 4.5', pressed: true }).waitFor();

    await board.bring(MEAN_C + HALF_C);
    board.follow(cycling(board.line - UP));
    await page.getByRole('button', { name: /^intermediate shrink/ }).click();
    const line = part(page, 'dial-line');
    await until('it says what is missing', async () =>
      (await line.innerText()).includes('No mark has been measured yet'),
    );
    await until('the mark is charted', async () => (await dialOf(program)).chart.points.length === 1, 60_000);
    const [point] = (await dialOf(program)).chart.points;
    expect(point).toMatchObject({ mark: 4.5, kind: 'measured', cycles: 3 });
    // Ten lines a second of the plate's own straight lines; reading and smoothing move it a little.
    expect(Math.abs((point?.meanC ?? 0) - MEAN_C)).toBeLessThan(1.5);

    await page.evaluate(() => {
      location.hash = '#setup/irons';
    });
    await part(page, 'dial-point').waitFor();
    await page.getByText('Type a reading of a hand thermometer').click();
    await page.getByLabel('Mark on the dial').fill('6');
    await page.getByLabel('Reading').fill(String(Math.round(cToF(165))));
    await page.reload();
    // What was typed survives a reload.
    await expect.poll(() => page.getByLabel('Mark on the dial').inputValue()).toBe('6');
    await page.getByLabel('Highest, if seen').fill('300');
    await page.getByRole('button', { name: 'Add to the chart' }).click();
    await page.getByText('must rise in that order').waitFor();
    await page.getByLabel('Highest, if seen').fill('340');
    await page.getByRole('button', { name: 'Add to the chart' }).click();
    await part(page, 'dial-said').getByText('Mark 6 is in the chart, as typed.').waitFor();
    // Both drawings are there, with lines in them, and say what they show.
    const chart = part(page, 'dial-chart-drawn');
    await chart
      .getByRole('img', { name: /^Mean at each mark\. mark 4\.5: \d+ °F ±\d+ °F, mark 6: 329 °F/ })
      .waitFor();
    expect(await chart.locator('path.plot-line--dot').count()).toBe(2);
    expect(await chart.locator('path.plot-line--hottest').first().getAttribute('d')).toMatch(
      /^M[\d.]+ [\d.]+L/,
    );
    await page.getByText('Show the cycles at each mark').click();
    const cycles = part(page, 'dial-cycles-drawn');
    await cycles
      .getByRole('img', { name: /^\d cycles at mark 4\.5: mean \d+ °F, from \d+ °F to \d+ °F\./ })
      .waitFor();
    expect(await cycles.locator('svg.plot-lines path.plot-line--plate').count()).toBeGreaterThan(0);
    await looksRight(page);

    await page.evaluate(() => {
      location.hash = '';
    });
    const said = await until('it says where to set the dial', async () => {
      const text = await line.innerText();
      if (/mean \d+ °F, peaks to \d+ °F\./.test(text)) return text;
      throw new Error(text);
    });
    const advised = Number(/^Set the dial to about (\d(?:\.\d)?) for intermediate shrink:/.exec(said)?.[1]);
    expect(advised).toBeGreaterThan(4.4);
    expect(advised).toBeLessThan(6);
    await looksRight(page);

    const session = (await program.api.running()) ?? '';
    expect((await program.api.findings(session)).some((f) => f.kind === 'stretch')).toBe(true);
    await program.end('SIGTERM');
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  });
});
