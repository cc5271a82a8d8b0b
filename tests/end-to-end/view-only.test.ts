import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusalOf } from './support/api.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, openPage, part, plateNumber } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

describe('a start that others can reach', () => {
  it('can be looked at and not commanded, says so everywhere, and shows what is chosen', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 195 });
    await board.plug();
    const program = await startProgram({
      data: join(folder, 'data'),
      args: ['--serial', board.path],
      listen: '0.0.0.0:0',
    });
    await until('it says so', () => program.said().includes('view-only'));
    const alarm = await until('an alarm stands', () => program.api.alarm('over-limit'));
    const { iron, kind, probe } = alarm;

    const acknowledged = await program.api.post('/api/alarms/acknowledge', { iron, kind, probe });
    expect(acknowledged.status).toBe(403);
    expect(refusalOf(acknowledged)).toContain('it can be looked at but not commanded');
    const [settings] = await program.api.probes();
    const { id, ...draft } = settings ?? { id: '' };
    expect((await program.api.put(`/api/probes/${encodeURIComponent(id)}`, draft)).status).toBe(403);
    expect((await program.api.alarm('over-limit'))?.state).toBe('unacknowledged');

    const page = await openPage(browser, program.address);
    await plateNumber(page, 'over the limit', (f) => f >= 382);
    expect(await part(page, 'view-only').innerText()).toContain('View only');
    await alarmCard(page, 'over-limit').waitFor();
    expect(
      await page.getByRole('button', { name: /Acknowledge|Silence|on its rest|recording/ }).count(),
    ).toBe(0);

    await page.goto(`${program.address}/#setup/irons`);
    await page.getByTestId('iron-card').waitFor();
    const grounds = await page
      .getByTestId('iron-card')
      .locator('.pick button')
      .evaluateAll((picks) =>
        picks.map((pick) => [pick.getAttribute('aria-pressed'), getComputedStyle(pick).backgroundColor]),
      );
    const groundsOf = (chosen: string) =>
      new Set(grounds.filter(([pressed]) => pressed === chosen).map(([, ground]) => ground));
    expect([groundsOf('true').size, groundsOf('false').size]).toEqual([1, 1]);
    expect(groundsOf('true')).not.toEqual(groundsOf('false'));
  });
});
