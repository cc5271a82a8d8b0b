import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Board } from './support/board.ts';
import { inputsInBook } from './support/book.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, lostAtMs, noNumber, openPage, part, plateNumber } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { quickest } from './support/quickest.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Within this a page that has lost its daemon says so, ms. */
const SAID_WITHIN_MS = 2000;

describe('a page whose daemon is gone', () => {
  it('says so, holds a mark, sends it once when the daemon is back, and is live again', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const board = new Board(join(folder, 'port'), { plateC: 150 });
    await board.plug();
    const args = ['--serial', board.path];
    const program = await startProgram({ data, args });
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of 150 °C', (f) => f === 302);
    await until('a session is recorded', () => program.api.running());

    const goneMs = Date.now();
    await program.end('SIGKILL');
    await noNumber(page);
    await part(page, 'daemon-lost').waitFor();
    expect((await lostAtMs(page)) - goneMs).toBeLessThan(SAID_WITHIN_MS);
    expect(await part(page, 'standing').first().getAttribute('data-kind')).toBe('no-reading');
    expect(await page.title()).toContain('Daemon lost');

    await page.getByRole('button', { name: 'on its rest' }).click();
    await part(page, 'unsent').waitFor();

    const again = await startProgram({ data, args, listen: `127.0.0.1:${program.port}` });
    await plateNumber(page, 'that is live again', (f) => f === 302);
    await part(page, 'daemon-lost').waitFor({ state: 'detached' });
    await part(page, 'unsent').waitFor({ state: 'detached' });
    const marks = await until('the mark is in the book', async () => {
      const sessions = await again.api.sessions();
      const inputs = sessions.flatMap(({ id }) => inputsInBook(data, id));
      const found = inputs.filter((input) => input.kind === 'mark');
      return found.length > 0 && found;
    });
    expect(marks).toHaveLength(1);
    expect(marks[0]).toMatchObject({ mark: { kind: 'place', place: 'on-rest' } });
    const [iron] = (await again.api.live()).situation.irons;
    expect(iron).toMatchObject({ place: 'on-rest' });
  });

  it('says so within two seconds too where the daemon hangs with its connections open', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 150 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of 150 °C', (f) => f === 302);
    const saidMs = await quickest(SAID_WITHIN_MS, async () => {
      await plateNumber(page, 'that is live', (f) => f === 302);
      const stoppedMs = Date.now();
      program.signal('SIGSTOP');
      await noNumber(page);
      program.signal('SIGCONT');
      return (await lostAtMs(page)) - stoppedMs;
    });
    expect(saidMs).toBeLessThan(SAID_WITHIN_MS);
    await plateNumber(page, 'that is live again', (f) => f === 302);
  });
});
