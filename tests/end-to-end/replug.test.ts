import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultWords } from '../../shared/words/faults.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import {
  alarmCard,
  backAtMs,
  isNumber,
  launchBrowser,
  lostAtMs,
  noNumber,
  openPage,
  part,
  plateNumber,
} from './support/page.ts';
import { startProgram } from './support/program.ts';
import { quickest } from './support/quickest.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Within this a page that has lost something says so, ms. */
const SAID_WITHIN_MS = 2000;
/** Within this of its return a device is read again, ms. */
const BACK_WITHIN_MS = 1000;

describe('a port that is pulled and put back', () => {
  it('is said at once, is an alarm while the iron may be hot, and is read again within a second', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 150 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of 150 °C', (f) => f === 302);

    await board.pull();
    expect(await noNumber(page)).toBe(faultWords['device-lost'].name);
    expect(await part(page, 'hot').count()).toBe(1);
    expect((await program.api.probe())?.plateC).toBeNull();
    await alarmCard(page, 'no-reading', 'unacknowledged').waitFor();
    const lost = (await program.api.live()).situation.devices[0];
    expect(lost).toMatchObject({ link: 'lost' });
    expect(lost?.detail).toContain('Plug it in again');
    await board.plug();
    await plateNumber(page, 'of 150 °C again', (f) => f === 302);
    await alarmCard(page, 'no-reading', 'returned-unacknowledged').waitFor();

    let saidMs = Number.POSITIVE_INFINITY;
    const backMs = await quickest(BACK_WITHIN_MS, async () => {
      const pulledMs = Date.now();
      await board.pull();
      await noNumber(page);
      saidMs = Math.min(saidMs, (await lostAtMs(page)) - pulledMs);
      const pluggedMs = await board.plug();
      await plateNumber(page, 'of 150 °C again', (f) => f === 302);
      return (await backAtMs(page)) - pluggedMs;
    });
    expect(saidMs).toBeLessThan(SAID_WITHIN_MS);
    expect(backMs).toBeLessThan(BACK_WITHIN_MS);
  });

  it('a board that falls silent with its cable in has no number on the page either', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 150 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of 150 °C', (f) => f === 302);
    const saidMs = await quickest(SAID_WITHIN_MS, async () => {
      board.speakAgain();
      await plateNumber(page, 'of 150 °C', (f) => f === 302);
      board.fallSilent();
      const silentMs = Date.now();
      expect(await noNumber(page)).toBe(faultWords.silent.name);
      return (await lostAtMs(page)) - silentMs;
    });
    expect(saidMs).toBeLessThan(SAID_WITHIN_MS);
    await alarmCard(page, 'no-reading', 'unacknowledged').waitFor();
    expect(isNumber(await part(page, 'plate').innerText())).toBe(false);
  });
});

describe('two boards that both call their probe 1', () => {
  it('are two probes on two irons, each with its own temperature', async () => {
    const folder = freshFolder();
    const small = new Board(join(folder, 'small'), { plateC: 120 });
    const big = new Board(join(folder, 'big'), { plateC: 160 });
    await Promise.all([small.plug(), big.plug()]);
    const program = await startProgram({
      data: join(folder, 'data'),
      args: ['--serial', small.path, '--serial', big.path],
    });
    const live = await until('both are read', async () => {
      const now = await program.api.live();
      return now.probes.filter((p) => p.quality === 'ok').length === 2 ? now : null;
    });
    const plateOf = (path: string) => live.probes.find((p) => p.id === `${path}/1`);
    expect(plateOf(small.path)?.plateC).toBeCloseTo(120, 0);
    expect(plateOf(big.path)?.plateC).toBeCloseTo(160, 0);
    expect(plateOf(small.path)?.iron).not.toBe(plateOf(big.path)?.iron);
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'of the hotter iron', (f) => f === 320);
    await until('the page shows the other one too', async () =>
      (await part(page, 'other-plate').allInnerTexts()).some((text) => text.startsWith('248')),
    );

    await big.pull();
    await until('only the pulled one is lost', async () => {
      const now = await program.api.live();
      const qualities = Object.fromEntries(now.probes.map((p) => [p.id, p.quality]));
      return qualities[`${big.path}/1`] === 'device-lost' && qualities[`${small.path}/1`] === 'ok';
    });
  });
});
