import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { startingPiece } from '../../shared/piece/starting.ts';
import { isKept } from './support/api.ts';
import { Board, checked } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram, verify } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const WATER = 'Example: water-borne fabric cement';
const SOLVENT = 'Example: solvent-borne fabric cement';

async function started(plateC: number) {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC });
  await board.plug();
  const data = join(folder, 'data');
  const program = await startProgram({ data, args: ['--serial', board.path] });
  await until('the board is read', async () => (await program.api.probe())?.quality === 'ok');
  const flap = startingPiece('Demo left flap', 'spruce', ['Upper', 'Lower']);
  await program.api.put('/api/pieces/flap', { ...flap, basedOn: 0 });
  return { board, program, data };
}

/** The air sensor on the board says this from now on. */
const tellAir = (board: Board, airC: number, rhPct: number): NodeJS.Timeout =>
  setInterval(() => board.write(`${checked(`p=air ta=${airC.toFixed(1)} rh=${rhPct.toFixed(1)}`)}\n`), 500);

const startCoat = async (page: Page, cement: string, places: readonly string[]): Promise<void> => {
  const form = part(page, 'start-coats');
  await form.getByRole('button', { name: cement }).click();
  await form.getByRole('button', { name: 'Demo left flap' }).click();
  for (const place of places) await form.getByRole('button', { name: place }).first().click();
  await form.getByRole('button', { name: /Start (the clock|\d+ clocks)/ }).click();
};

const coatAt = async ({ api }: Program, place: string): Promise<CoatAnswer> =>
  (await api.coats()).coats.find(({ placeName }) => placeName.includes(place)) ??
  expect.unreachable(`no coat on ${place}`);

const likelyMs = (coat: CoatAnswer): number =>
  Date.parse(coat.stages.find(({ kind }) => kind === 'ready-for-iron')?.likely ?? '');

describe('coats', () => {
  it('four of them are started on the Bench page, dry sooner by the heater, are there after a kill, and warn under the iron', async () => {
    const { board, program, data } = await started(100);
    let air = tellAir(board, 18, 70);
    const page = await openPage(browser, `${program.address}/#bench`);
    await part(page, 'bench-air').getByText('70').first().waitFor();
    await startCoat(page, WATER, ['First end', 'Last end', 'Middle']);
    await startCoat(page, WATER, ['The whole side: Upper']);
    await until('four clocks run', async () => (await part(page, 'coat').count()) === 4);
    const before = likelyMs(await coatAt(program, 'Middle'));

    // The shop heater is switched on.
    clearInterval(air);
    air = tellAir(board, 27, 41);
    await until(
      'it comes sooner',
      async () => likelyMs(await coatAt(program, 'Middle')) < before - 60 * 60_000,
    );
    const shown = await part(page, 'coat').first().innerText();
    expect(shown).toContain('set to touch');

    // A tap, taken back; another that stays; then the program is killed.
    const middle = page.locator('[data-testid="coat"]', { hasText: 'Middle' });
    // A card takes no press within a second of a change.
    const press = async (name: RegExp): Promise<void> => {
      await page.waitForTimeout(1100);
      await middle.getByRole('button', { name }).click();
    };
    await press(/^dry now/);
    await until('it was said dry', async () => (await coatAt(program, 'Middle')).stage === 'ready-for-iron');
    await press(/^Take back/);
    await until('it was taken back', async () => (await coatAt(program, 'Middle')).stage === 'set-to-touch');
    await press(/^still tacky/);
    await until(
      'it was said tacky',
      async () => (await coatAt(program, 'Middle')).stages[0]?.saidTacky !== null,
    );
    const last = await coatAt(program, 'Middle');
    await program.end('SIGKILL');
    const again = await startProgram({
      data,
      args: ['--serial', board.path],
      listen: new URL(program.address).host,
    });
    const back = await until('the coats are back', async () => {
      const { coats } = await again.api.coats();
      return coats.length === 4 ? coats : null;
    });
    const same = back.find(({ id }) => id === last.id);
    expect(same?.startedAt).toBe(last.startedAt);
    expect(same?.stages[0]?.saidTacky).toBe(last.stages[0]?.saidTacky);
    // As it was but for the seconds in which nobody measured the air.
    expect(Math.abs(likelyMs(same ?? last) - likelyMs(last))).toBeLessThan(2 * 60_000);
    await until('the page shows them', async () => (await part(page, 'coat').count()) === 4);

    // The coat on the whole side goes; on the area that is ironed one sounds, elsewhere it is a line.
    const whole = back.find(({ area }) => area === null)?.id ?? '';
    expect(
      isKept(await again.api.post('/api/coats', { act: { kind: 'end', coat: whole, why: 'mistake' } })),
    ).toBe(true);
    await board.bring(121);
    await until('the plate is read', async () => (await again.api.probe())?.quality === 'ok');
    const { areas } = (await again.api.pieces())[0] ?? expect.unreachable();
    const coated = new Set(back.map(({ area }) => area));
    const bare = areas.find(({ id, side }) => side === 1 && !coated.has(id)) ?? expect.unreachable();
    const iron = async (area: string): Promise<void> => {
      expect(isKept(await again.api.post('/api/work', { act: { kind: 'area', area } }))).toBe(true);
    };
    await again.api.post('/api/work', { act: { kind: 'piece', piece: 'flap', side: 1 } });
    await iron(bare.id);
    await page.goto(`${program.address}/#piece/flap`);
    await part(page, 'wet-elsewhere').getByText('Middle').waitFor();
    expect(await again.api.alarm('wet-cement')).toBeNull();
    await iron(last.area ?? '');
    await until('it sounds', async () => (await again.api.alarm('wet-cement'))?.state === 'unacknowledged');
    await part(page, 'alarm').getByText('Ironing where the cement is wet').waitFor();
    const session = (await again.api.running()) ?? '';
    clearInterval(air);
    await again.end('SIGTERM');
    expect((await verify(session, data)).code).toBe(0);
  });

  it('one whose vapour burns asks beside a hot iron, and again once an iron that was said to be off grows hot', async () => {
    const { board, program } = await started(121);
    await until('the iron is hot', async () => (await program.api.running()) !== null);
    const page = await openPage(browser, `${program.address}/#bench`);
    await startCoat(page, WATER, ['First end']);
    await until('its clock runs', async () => (await program.api.coats()).coats.length === 1);
    expect((await program.api.coats()).fire).toEqual([]);
    await startCoat(page, SOLVENT, ['Middle']);
    const question = part(page, 'fire-question');
    await question.getByText('The vapour of Example: solvent-borne').waitFor();
    // Nobody answers: it is called out.
    await until(
      'it is called out',
      async () => (await program.api.alarm('fire-hazard'))?.state === 'unacknowledged',
      40_000,
    );
    await page.waitForTimeout(1100);
    await question.getByRole('button', { name: /The iron is off/ }).click();
    await until(
      'the alarm is gone',
      async () => (await program.api.alarm('fire-hazard'))?.state === 'returned-unacknowledged',
    );
    await question.waitFor({ state: 'detached' });
    expect((await coatAt(program, 'Middle')).fire).toMatchObject({ answer: 'iron-off' });
    await board.bring(35);
    await until('the iron is cold', async () => !(await program.api.live()).situation.irons[0]?.hot);
    await board.bring(121);
    await question.getByText('The vapour of Example: solvent-borne').waitFor();
    expect((await program.api.coats()).fire).toHaveLength(1);
  });
});
