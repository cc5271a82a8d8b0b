import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { PieceHeat } from '../../shared/messages/piece.ts';
import { startingPiece } from '../../shared/piece/starting.ts';
import { isKept, refusalOf } from './support/api.ts';
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

interface Started {
  readonly board: Board;
  readonly program: Program;
  readonly data: string;
}

async function started(): Promise<Started> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC: 100 });
  await board.plug();
  const data = join(folder, 'data');
  const program = await startProgram({ data, args: ['--serial', board.path] });
  await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
  await board.bring(121);
  return { board, program, data };
}

/** The only piece that there is, with what it has had. */
async function heatOf({ api }: Program): Promise<PieceHeat> {
  const [piece] = await api.pieces();
  return api.heat(piece?.id ?? expect.unreachable());
}

const areaHeat = (heat: PieceHeat, name: string, side = 1) => {
  const area = heat.piece.areas.find((one) => one.name === name && one.side === side);
  return heat.areas[area?.id ?? ''] ?? expect.unreachable();
};

/** Goes on by Tab until what is named has the focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const now = document.activeElement;
      if (now?.matches('button, a, input') !== true) return '';
      const label = now instanceof HTMLInputElement ? (now.labels?.[0]?.textContent ?? '') : '';
      return `${now.getAttribute('aria-label') ?? ''} ${label} ${now.textContent ?? ''}`;
    });
    if (name.test(at)) return;
  }
  throw new Error(`Tab never comes to ${name}`);
}

async function press(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

const sentence = (page: Page) => part(page, 'piece-sentence');

describe('a piece', () => {
  it('is made, worked and put right by keyboard alone; what it had is there after a kill, and replays exactly', async () => {
    const { board, program, data } = await started();
    const page = await openPage(browser, `${program.address}/#piece/new`);
    await tabTo(page, /Name/);
    await page.keyboard.type('Demo left flap');
    await press(page, /Save the new piece/);
    await press(page, /This piece now/);
    await sentence(page).getByText('Demo left flap').waitFor();
    await press(page, /^\s*initial shrink/);
    await page.keyboard.press('n');
    await sentence(page).getByText('presumed').waitFor();
    await until('the area has had its stage', async () =>
      (await sentence(page).innerText()).includes('initial shrink reached'),
    );

    // A second one by mistake, taken back: the first goes on.
    const first = (await program.api.live()).situation.irons[0]?.at?.areaName ?? '';
    await page.keyboard.press('n');
    await until(
      'it is elsewhere',
      async () => (await program.api.live()).situation.irons[0]?.at?.areaName !== first,
    );
    await page.keyboard.press('u');
    await until(
      'it is back',
      async () => (await program.api.live()).situation.irons[0]?.at?.areaName === first,
    );

    // Over the limit there: the item names the place.
    await board.bring(195);
    await part(page, 'alarm').first().getByText('Plate over the fabric limit').waitFor();
    await until('the fabric has followed', async () =>
      (await sentence(page).innerText()).includes('final shrink reached'),
    );
    await page.keyboard.press('a');
    await board.bring(121);
    await page.keyboard.press('l');
    await page.keyboard.press('t');
    await until(
      'the other side is up',
      async () => (await program.api.live()).situation.irons[0]?.at?.side === 2,
    );
    await page.keyboard.press('r');
    await until(
      'it is on its rest',
      async () => (await program.api.live()).situation.irons[0]?.place === 'on-rest',
    );
    const [item] = await program.api.items();
    expect(item).toMatchObject({
      limit: 'fabric',
      place: 'on-work',
      whereName: `Demo left flap, Upper side, ${first}`,
    });
    expect(item?.guardBandK).toBeGreaterThan(0);
    await part(page, 'piece-items').waitFor();

    const before = await heatOf(program);
    expect(before.suspects).toEqual([item?.id]);
    expect(areaHeat(before, first)).toMatchObject({ reached: { id: 'final' }, presumed: true });
    expect(before.visits.filter((v) => v.lapDone)).toHaveLength(1);
    const session = (await program.api.running()) ?? '';
    await until('all is kept', async () =>
      (await program.api.findings(session)).some((f) => f.kind === 'visit'),
    );
    await program.end('SIGKILL');

    const again = await startProgram({ data, args: ['--serial', board.path] });
    const after = await until('the book was read', async () => {
      const heat = await heatOf(again);
      return (await again.api.live()).situation.work.ready && heat.visits.length > 0 ? heat : null;
    });
    expect(after.areas).toEqual(before.areas);
    expect((await again.api.live()).situation.irons[0]?.at).toMatchObject({
      side: 2,
      pieceName: 'Demo left flap',
    });
    expect((await again.api.live()).situation.work.recent).toEqual([after.piece.id]);
    await again.end('SIGTERM');
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  }, 120_000);

  it('is worked by touch: an area, the next, a lap, turned over, on its rest', async () => {
    const { program } = await started();
    const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 844 } });
    onTestFinished(() => context.close());
    const page = await context.newPage();
    await page.goto(`${program.address}/#piece/new`);
    await page.getByLabel('Name', { exact: true }).fill('Demo right flap');
    await page.getByRole('button', { name: 'Save the new piece' }).tap();
    await page.getByRole('button', { name: 'This piece now' }).tap();
    await page.getByRole('button', { name: 'initial shrink', exact: true }).tap();
    await page
      .getByRole('button', { name: /Middle/ })
      .first()
      .tap();
    await sentence(page).getByText('Middle').waitFor();
    for (const act of ['next', 'lap-done', 'turned', 'on-rest']) await part(page, act).tap();
    await until('all of it was heard', async () => {
      const [iron] = (await program.api.live()).situation.irons;
      return iron?.place === 'on-rest' && iron.at?.side === 2;
    });
    const heat = await heatOf(program);
    expect(heat.visits.map((v) => v.lapDone)).toContain(true);
    expect(areaHeat(heat, 'Middle').laps).toBeGreaterThan(0);
  }, 60_000);

  it('refuses in words what can’t be, and loses nothing of it', async () => {
    const { program } = await started();
    const { api } = program;
    const refused = async (act: unknown): Promise<string> => {
      const answer = await api.post('/api/work', { act });
      expect(answer.status).toBe(409);
      return refusalOf(answer);
    };
    expect(await refused({ kind: 'next' })).toContain('No piece is in hand');
    expect(await refused({ kind: 'lap-done' })).toContain('No piece is in hand');
    const one = startingPiece('Demo fairing', 'birch ply', ['Outside']);
    expect((await api.put(`/api/pieces/demo`, { ...one, basedOn: 0 })).status).toBe(200);
    expect(isKept(await api.post('/api/work', { act: { kind: 'piece', piece: 'demo' } }))).toBe(true);
    expect(await refused({ kind: 'turned' })).toContain('one side only');
    expect(await refused({ kind: 'area', area: 'nowhere' })).toContain('has no area');
    const answer = await api.post('/api/work', { act: { kind: 'piece', piece: 'gone' } });
    expect([answer.status, refusalOf(answer)]).toEqual([404, expect.stringContaining('no piece "gone"')]);
    // Its map is changed while it is in hand: what was marked stays, and the next mark goes by the new map.
    const [area] = one.areas.filter((a) => a.kind === 'cloth');
    expect(isKept(await api.post('/api/work', { act: { kind: 'area', area: area?.id ?? '' } }))).toBe(true);
    const smaller = { ...one, areas: one.areas.filter((a) => a.id !== area?.id), basedOn: 1 };
    expect((await api.put(`/api/pieces/demo`, smaller)).status).toBe(200);
    expect((await api.live()).situation.irons[0]?.at?.areaName).toBe(area?.name);
    expect(await refused({ kind: 'area', area: area?.id ?? '' })).toContain('has no area');
    // A second page with the old map in its hands does not overwrite the new one.
    const late = await api.put(`/api/pieces/demo`, { ...one, basedOn: 1 });
    expect([late.status, refusalOf(late)]).toEqual([409, expect.stringContaining('changed meanwhile')]);
  }, 60_000);
});
