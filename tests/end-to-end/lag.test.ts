import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusalOf } from './support/api.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { onSlowDisk, type Program, startProgram } from './support/program.ts';
import { shooting } from './support/shots.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

interface Bench {
  readonly program: Program;
  readonly board: Board;
  readonly page: Page;
  /** Address of the probe's lag in the API. */
  readonly path: string;
}

const shoot = shooting('lag', 'lag');
const AIR_C = 22;
/** A window at rest, and some. */
const AT_REST_MS = 60_000;

/** On `slowDisk` it takes longer to write the settings than until the page asks again how the measuring stands. */
async function begin({ slowDisk = false } = {}): Promise<Bench> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: AIR_C });
  await board.plug();
  const program = await startProgram({
    data: join(folder, 'data'),
    args: ['--serial', board.path],
    env: slowDisk ? onSlowDisk : {},
  });
  const probe = await until('the probe is heard', () => program.api.probe());
  const page = await openPage(browser, program.address);
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('link', { name: 'Irons and probes' }).click();
  await part(page, 'measure-lag').waitFor();
  return { program, board, page, path: `/api/probes/${encodeURIComponent(probe.id)}/lag` };
}

const says = (page: Page, text: string | RegExp) =>
  part(page, 'lag-state').getByText(text).waitFor({ timeout: AT_REST_MS });

const lagOf = async (program: Program) => (await program.api.probes())[0]?.lag ?? null;

describe('a spring-clipped probe', () => {
  it('is put on a hot plate: from the first tap to the time constant in force, across a reload, on a slow disk', async () => {
    const { program, board, page, path } = await begin({ slowDisk: true });
    await part(page, 'lag-known').getByText('Not measured.').waitFor();
    await shoot(page, 'none');
    await part(page, 'measure-lag').click();
    await part(page, 'water-caution').getByText('A mains iron and water never meet.').waitFor();
    await part(page, 'begin-fitted').click();
    await part(page, 'step-clip').waitFor();
    expect(await part(page, 'step-plunge').count()).toBe(0);
    const wet = await program.api.post(`${path}/step`, { kind: 'plunge' });
    expect([wet.status, refusalOf(wet)]).toEqual([422, expect.stringContaining('never meet')]);
    await shoot(page, 'begun');
    await part(page, 'step-clip').click();
    await says(page, 'Not at rest yet');
    // Whoever has no mouse goes on from here.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe('Measuring the lag');
    await says(page, 'At rest. Clip it onto the plate now');
    await shoot(page, 'ready');
    await page.reload();
    await says(page, 'At rest. Clip it onto the plate now');
    board.meet(176, 2.5);
    await says(page, 'The step was seen.');
    await expectNothingInTheWay(page);
    await page.reload();
    await part(page, 'lag-found').waitFor({ timeout: AT_REST_MS });
    expect((await program.api.live()).alarms).toEqual([]);
    await shoot(page, 'found');
    await expectNothingInTheWay(page);
    await part(page, 'keep-lag').click();
    await part(page, 'said')
      .getByText(/^Kept: 2\.[456]\d s/)
      .waitFor();
    await part(page, 'lag-known')
      .getByText(/Time constant 2\.\d\d s ± 0\.\d\d s/)
      .waitFor();
    await page.getByText('What that means').click();
    await page.getByText('63.2 %', { exact: false }).first().waitFor();
    await shoot(page, 'kept');
    const lag = await lagOf(program);
    expect(Math.abs((lag?.tauS ?? 0) - 2.5)).toBeLessThan(0.15);
    expect(lag?.standardS).toBeLessThan(0.2);

    await part(page, 'forget-lag').click();
    await part(page, 'lag-known').getByText('Not measured.').waitFor();
    expect(await lagOf(program)).toBeNull();
    await part(page, 'undo').click();
    await part(page, 'lag-known').getByText('Time constant').waitFor();
    expect((await lagOf(program))?.tauS).toBe(lag?.tauS);
  }, 180_000);
});

describe('a loose probe', () => {
  it('plunged before it was at rest is refused with what to do; tried again in ice, it is measured', async () => {
    const { program, board, page, path } = await begin();
    await part(page, 'measure-lag').click();
    await part(page, 'begin-loose').click();
    await part(page, 'step-plunge').click();
    await says(page, 'Not at rest yet');
    board.meet(0.3, 0.8);
    await part(page, 'lag-refused').getByText('not at rest when the step came').waitFor();
    await shoot(page, 'refused');
    await expectNothingInTheWay(page);
    const kept = await program.api.post(`${path}/keep`, {});
    expect(kept.status).toBe(409);
    board.meet(AIR_C, 0.8);
    await until('the probe is back in the air', async () => {
      const plateC = (await program.api.probe())?.plateC;
      return typeof plateC === 'number' && plateC > AIR_C - 0.5;
    });
    await part(page, 'again-lag').click();
    await part(page, 'stop-step').click();
    await part(page, 'lag-refused').waitFor();
    await part(page, 'again-lag').click();
    await says(page, 'At rest. Plunge it in now');
    board.meet(0.3, 0.8);
    await part(page, 'lag-found').waitFor({ timeout: AT_REST_MS });
    expect((await program.api.live()).alarms).toEqual([]);
    await part(page, 'keep-lag').click();
    await part(page, 'lag-known').getByText('Time constant 0.').waitFor();
    expect(Math.abs(((await lagOf(program))?.tauS ?? 0) - 0.8)).toBeLessThan(0.15);
  }, 180_000);
});
