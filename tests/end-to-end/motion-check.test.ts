import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { alarmCard, launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { shooting } from './support/shots.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const shoot = shooting('motion', 'motion');

/** What its sensor reads, g, as invented for this test: nearly nothing at rest, a tenth and more in a stroke. */
const STILL_G = 0.006;
const MOVED_G = 0.18;
/** Longer than the whole check takes, on a busy machine too. */
const CHECK_MS = 40_000;

interface Bench {
  readonly program: Program;
  readonly board: Board;
  readonly page: Page;
  /** Moves the iron, or sets it down. */
  readonly moves: (g: number) => void;
}

async function begin(): Promise<Bench> {
  let g = STILL_G;
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), {
    plateC: 22,
    lineAs: (tC, line) =>
      `p=1 n=${line % 65_536} ms=${Math.floor(performance.now())} t=${tC.toFixed(2)} g=${(g * (1 + (line % 4) / 10)).toFixed(4)}`,
  });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  await until('the probe is heard', () => program.api.probe());
  const page = await openPage(browser, program.address);
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('link', { name: 'Irons and probes' }).click();
  await part(page, 'check-motion').waitFor();
  return { program, board, page, moves: (now) => (g = now) };
}

const asked = (page: Page, asks: 'let-stand' | 'move') =>
  page.locator(`[data-testid="motion-trial"][data-asks="${asks}"]`).waitFor({ timeout: CHECK_MS });

const checkOf = async (program: Program) => (await program.api.probes())[0]?.motion ?? null;

describe('the check of still and moving', () => {
  it('is led to its end, is kept over a reload, and then rest on one spot is an alarm', async () => {
    const { program, board, page, moves } = await begin();
    await part(page, 'motion-known').getByText('Rest on one spot is not measured').waitFor();
    await shoot(page, 'none');
    expect(await violations(page)).toEqual([]);

    // Moved while it was to stand: said, and nothing is kept.
    moves(MOVED_G);
    await part(page, 'check-motion').click();
    await asked(page, 'let-stand');
    await part(page, 'motion-trial')
      .getByText(/^\d s left$/)
      .waitFor();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe('Checking still and moving');
    await shoot(page, 'stand');
    expect(await violations(page)).toEqual([]);
    await part(page, 'motion-refused').getByText('It was not still').waitFor({ timeout: CHECK_MS });
    await shoot(page, 'refused');
    expect(await checkOf(program)).toBeNull();

    moves(STILL_G);
    await part(page, 'check-motion').click();
    await asked(page, 'let-stand');
    await page.reload();
    await asked(page, 'move');
    moves(MOVED_G);
    await shoot(page, 'move');
    await part(page, 'motion-known').getByText('Checked').waitFor({ timeout: CHECK_MS });
    await shoot(page, 'kept');
    await expectNothingInTheWay(page);
    const check = await checkOf(program);
    expect(check?.stillG).toBeGreaterThan(STILL_G);
    expect(check?.stillG).toBeLessThan(check?.movingG ?? 0);
    expect(check?.movingG).toBeLessThan(MOVED_G);

    await page.reload();
    await part(page, 'motion-known')
      .getByText(/Still up to 0\.\d{3} g, moving from 0\.\d{3} g/)
      .waitFor();

    await part(page, 'forget-motion').click();
    await part(page, 'motion-known').getByText('Rest on one spot is not measured').waitFor();
    expect(await checkOf(program)).toBeNull();
    await part(page, 'undo').click();
    await part(page, 'motion-known').getByText('Checked').waitFor();
    expect(await checkOf(program)).toEqual(check);

    await board.bring(150);
    await until('a session is recorded', () => program.api.running());
    const onWork = await program.api.post('/api/work', { act: { kind: 'on-work' } });
    expect(onWork.status, JSON.stringify(onWork.body)).toBe(200);
    moves(STILL_G);
    await alarmCard(page, 'dwell').waitFor({ timeout: 30_000 });
    moves(MOVED_G);
    await until('it moves again, and does not rest any more', async () => {
      const alarm = await program.api.alarm('dwell');
      return alarm === null || alarm.state === 'returned-unacknowledged';
    });
  }, 180_000);

  it('can be given up, and says so where the line carries no motion value', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), {
      lineAs: (tC, line) => `p=1 n=${line % 65_536} ms=${Math.floor(performance.now())} t=${tC.toFixed(2)}`,
    });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    await until('the probe is heard', () => program.api.probe());
    const page = await openPage(browser, `${program.address}#setup/irons`);
    await part(page, 'motion-known').getByText('no motion value has come').waitFor();
    await part(page, 'check-motion').click();
    await part(page, 'give-up-motion').click();
    await part(page, 'check-motion').click();
    await part(page, 'motion-refused').getByText('No motion value came').waitFor({ timeout: CHECK_MS });
    expect(await checkOf(program)).toBeNull();
  }, 90_000);
});
