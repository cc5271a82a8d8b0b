import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, openPage, part, plateNumber, standingKind } from './support/page.ts';
import { startProgram, verify } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** What the board's lamp and buzzer were last told. */
const lampOf = (board: Board): number => Number([...board.heard.matchAll(/alarm=([0-3])/g)].at(-1)?.[1] ?? 0);

describe('a warm-up and an overheat, line by line', () => {
  it('is on the page as number, stage and alarm, is acknowledged there, and stands in the book', async () => {
    const folder = freshFolder();
    const data = join(folder, 'data');
    const board = new Board(join(folder, 'port'), { plateC: 22 });
    await board.plug();
    const program = await startProgram({ data, args: ['--serial', board.path] });
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'at room temperature', (f) => f === 72 || f === 71);
    expect(await standingKind(page)).toBe('cold');
    expect(await program.api.running()).toBeNull();

    await board.bring(121);
    // 121 degC are 249.8 degF, which is shown in degF unless the user chooses otherwise.
    await plateNumber(page, 'in the tack stage', (f) => f === 250);
    expect(await standingKind(page)).toBe('in-stage');
    expect(await part(page, 'standing').first().innerText()).toContain('tack');
    const session = await until('a session is recorded', () => program.api.running());

    await board.bring(197);
    // 197 degC: the highest that it gets.
    await plateNumber(page, 'over the limit of 375 °F', (f) => f === 387);
    const card = alarmCard(page, 'over-limit', 'unacknowledged');
    await card.waitFor();
    expect(await card.innerText()).toContain('Lift the iron off');
    expect(await standingKind(page)).toBe('over-limit');
    await until('the board is told to sound', () => board.heard.includes('alarm=3'));

    await card.getByRole('button', { name: /^Acknowledge/ }).click();
    await alarmCard(page, 'over-limit', 'acknowledged').waitFor();
    await until('the board is told that it was seen', () => board.heard.includes('ack=1'));
    await until('the board is told that nothing urgent sounds', () => lampOf(board) < 3);

    await board.bring(150);
    await alarmCard(page, 'over-limit').waitFor({ state: 'detached' });
    await plateNumber(page, 'back under the limit', (f) => f === 302);

    const found = await program.api.alarmFindings(session, 'over-limit');
    expect(found.map((f) => f.change)).toEqual(['raised', 'acknowledged', 'cleared']);
    expect(found.at(-1)?.alarm.peakC).toBe(197);
    expect((await program.api.session(session))?.peakC).toBe(197);
    const peaks = (await program.api.readings(session)).filter((row) => row['plate_c'] === '197');
    expect(peaks.length).toBeGreaterThan(0);
    expect(await verify(session, data)).toMatchObject({ code: 0 });

    await program.end('SIGTERM');
    const checked = await verify(session, data);
    expect(checked, checked.stdout).toMatchObject({ code: 0 });
    expect(checked.stdout).toContain('it gives the stored findings');
  });
});
