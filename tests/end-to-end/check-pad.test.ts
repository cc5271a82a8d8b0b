import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

const ROOM_C = 22;

/** A quick pad of 1 s comes to a plate that is put on it; bare it comes back to the room in 8 s each 1/e. */
const towards =
  (from: number, fromC: number, toC: number, tauS: number) =>
  (line: number): number =>
    toC + (fromC - toC) * Math.exp(-(line - from) / 10 / tauS) + 0.05 * (line % 3);

const goTo = async (page: Page, hash: string): Promise<void> => {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
};

async function looksRight(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violations(page), colorScheme).toEqual([]);
  }
  const before = page.viewportSize() ?? { width: 1280, height: 720 };
  await page.setViewportSize({ width: 320, height: 640 });
  await until(
    'nothing scrolls sideways',
    async () => (await page.evaluate(() => document.documentElement.scrollWidth)) <= 320,
  );
  await page.setViewportSize(before);
}

async function started(): Promise<{ board: Board; program: Program; data: string }> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: ROOM_C });
  await board.plug();
  const data = join(folder, 'data');
  const program = await startProgram({ data, args: ['--serial', board.path] });
  await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
  return { board, program, data };
}

describe('a check pad', () => {
  it('is told by touch, reads a parked iron until it has settled, and shows the age of that afterwards', async () => {
    const { board, program, data } = await started();
    const { id, label, thermocouple, unit } = (await program.api.probes())[0] ?? expect.unreachable();
    // Slower than it is: lines of a busy machine come late.
    const lag = { tauS: 3, standardS: 0.05, measuredAt: '2026-01-01T08:00:00Z' };
    const settled = { label, thermocouple, unit, lag };
    await program.api.put(`/api/probes/${encodeURIComponent(id)}`, settled);

    const page = await openPage(browser, `${program.address}/#setup/irons`);
    await part(page, 'place').getByRole('button', { name: 'Say it anew' }).click();
    await page.getByRole('button', { name: 'In its check pad' }).click();
    await part(page, 'place').getByText('the iron is checked whenever it is parked').waitFor();

    await goTo(page, '');
    const age = part(page, 'moment-age');
    await age.getByText('not checked yet').waitFor();
    expect(await part(page, 'hot').first().innerText()).toBe('HOT');
    expect(await part(page, 'plate').count()).toBe(0);

    board.follow(towards(board.line, ROOM_C, 150, 1));
    await part(page, 'settling').waitFor();
    await age.getByText('on its check pad now').waitFor({ timeout: 20_000 });
    const shown = Number((await part(page, 'moment-value').innerText()).replace(/\D/g, ''));
    // 150 degC is 302 degF; what the pad has left of its way is less than its uncertainty.
    expect(shown).toBeGreaterThan(292);
    expect(shown).toBeLessThan(304);

    board.follow(towards(board.line, 150, ROOM_C, 8));
    await age.getByText(/^checked \d+ s ago$/).waitFor({ timeout: 20_000 });
    expect(await part(page, 'hot').first().innerText()).toBe('HOT');
    await looksRight(page);

    // Parked for a moment only: no check, and the page says so.
    await until(
      'the pad is nearly bare',
      async () => ((await program.api.probe())?.readC ?? 99) < 60,
      20_000,
    );
    board.follow(towards(board.line, 55, 150, 3));
    await part(page, 'settling').waitFor();
    board.follow(towards(board.line, 100, ROOM_C, 4));
    await part(page, 'missed').getByText('before it settled').waitFor({ timeout: 20_000 });

    expect((await program.api.live()).alarms).toEqual([]);
    const session = (await program.api.running()) ?? '';
    // What was found is in the book within a second.
    const checks = await until('all is kept', async () => {
      const kept = (await program.api.findings(session)).filter((f) => f.kind === 'check');
      return kept.length < 3 ? null : kept;
    });
    expect(checks.map((f) => [f.settled !== null, f.ended])).toEqual([
      [true, null],
      [true, 'lifted'],
      [false, 'lifted'],
    ]);
    const rows = await program.api.readings(session);
    const kinds = new Set(rows.map((row) => row['watched']));
    // Recording begins with the minutes before, in which the probe still counted as one on the plate.
    expect([...kinds].sort()).toEqual(['bare', 'checked', 'monitored', 'settling']);
    for (const { watched, plate_c: plateC, check_c: checkC, typed_c: typedC } of rows) {
      expect(plateC === '').toBe(watched !== 'monitored');
      expect(checkC === '').toBe(watched !== 'checked' && watched !== 'settling');
      expect(typedC).toBe('');
    }

    await goTo(page, `#records/${session}`);
    await page
      .getByText(/Checked on its pad: .* settled/)
      .first()
      .waitFor();
    await page.getByText('No check: lifted before it settled').first().waitFor();
    expect(await part(page, 'session-watched').first().innerText()).toBe('checked');
    expect(await part(page, 'probe-fact').last().innerText()).toContain('in the check pad');
    await looksRight(page);
    await program.end('SIGTERM');
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  });
});

describe('a reading that is typed', () => {
  it('is kept and shown as such, of an iron without a probe too, and answered at once over the limit', async () => {
    const { program } = await started();
    const page = await openPage(browser, `${program.address}/#setup/irons`);
    await page.getByRole('button', { name: 'Add an iron without a probe' }).click();
    await page.getByText('No probe: read by hand thermometer.').waitFor();
    await goTo(page, '');
    await page.getByText('Work with Iron read by hand').click();
    const other = page.locator('.other', { hasText: 'Iron read by hand' });
    await other.getByLabel('Plate by hand thermometer').fill('hot');
    await other.getByRole('button', { name: 'Keep this reading' }).click();
    await other.getByText('Write a plate temperature in °F').waitFor();
    await other.getByLabel('Plate by hand thermometer').fill('250');
    await other.getByRole('button', { name: 'Keep this reading' }).click();
    await other.getByText(/typed \d+ s ago/).waitFor();
    await looksRight(page);
    await other.getByLabel('Plate by hand thermometer').fill('380');
    await other.getByRole('button', { name: 'Keep this reading' }).click();
    await other.getByText('380 °F is over the fabric limit of 375 °F').waitFor();
    const alarm = page.locator('[data-testid="alarm"][data-kind="over-limit"]');
    await alarm.getByText('By a reading typed from a hand thermometer.').waitFor();
    await alarm.getByRole('button', { name: 'Acknowledge' }).click();
    await looksRight(page);
    await goTo(page, '#setup/irons');
    const card = page.locator('[data-testid="iron-card"]', { hasText: 'No probe' });
    const before = await program.api.irons();
    const focused = () => page.evaluate(() => document.activeElement?.textContent);
    await card.getByRole('button', { name: 'Take this iron away' }).press('Enter');
    await card.waitFor({ state: 'detached' });
    await expect.poll(focused).toContain('is gone');
    await part(page, 'undo').press('Enter');
    await card.waitFor();
    await expect.poll(focused).toBe('Undone.');
    expect(await program.api.irons()).toEqual(before);
  });
});

describe('a probe that is moved to another iron', () => {
  it('counts for nothing until its place is told, and the page asks for that', async () => {
    const { board, program } = await started();
    const page = await openPage(browser, `${program.address}/#setup/irons`);
    await page.getByRole('button', { name: 'Add an iron without a probe' }).click();
    await page.getByRole('button', { name: 'Iron read by hand', exact: true }).click();
    await part(page, 'place-not-told').getByText('say where it sits').waitFor();
    await goTo(page, '');
    await board.bring(120);
    await part(page, 'not-counted').getByText('place not told').waitFor();
    await part(page, 'not-counted')
      .getByText(/reads 24\d °F, not counted/)
      .waitFor();
    expect(await part(page, 'plate').count()).toBe(0);
    expect(await part(page, 'hot').first().innerText()).toBe('HOT');
    await looksRight(page);
    await page.getByRole('button', { name: 'Middle of the plate' }).click();
    await page.getByRole('button', { name: 'Clamped or screwed down' }).click();
    await part(page, 'plate')
      .getByText(/^24\d$/)
      .waitFor();
    await part(page, 'place-not-told').waitFor({ state: 'detached' });
    const [probe] = (await program.api.live()).probes;
    expect(probe).toMatchObject({ seat: 'fitted', place: { kind: 'fitted', spot: 'middle', by: 'clamped' } });
  });
});
