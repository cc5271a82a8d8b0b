import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demoCements, ribCement } from '../../fixtures/cements.ts';
import { atBench, item, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron } from '../../fixtures/pieces.ts';
import { scenes } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';
import { tabTo } from './looks.ts';

/** What is pressed by keys is often gone with the press: the focus goes to what came of it, and not to the page's beginning. */

const bench = Bench.ofFile();

/** What has the focus, in its words; empty where nothing has. */
const focused = (page: Page) =>
  expect.poll(() =>
    page.evaluate(() => {
      const at = document.activeElement;
      return at === null || at === document.body ? '' : `${at.getAttribute('name') ?? ''}${at.textContent}`;
    }),
  );

describe('the focus', () => {
  it.each(['.sound-line button', '[data-testid=unheard] button'])(
    'goes to “Sound on” where sound was turned on: %s',
    async (pressed) => {
      const { page } = await bench.show({
        ...scenes['in-stage'],
        situation: { ...scenes['in-stage'].situation, hearing: { armedPages: 0, unheard: true } },
      });
      await page.locator(pressed).focus();
      await page.keyboard.press('Enter');
      await focused(page).toBe('Sound on');
    },
    30_000,
  );

  it('stays where somebody works while sound goes on by itself', async () => {
    const { page } = await bench.show(scenes['in-stage'], {
      before:
        "localStorage.setItem('soleplate.sound', JSON.stringify({ wanted: true, loudness: 'low', tick: false }))",
    });
    await page.getByRole('button', { name: '°C Celsius' }).focus();
    await page.keyboard.press('Enter');
    await focused(page).toBe('°C');
  }, 30_000);

  it('goes to the piece that was taken in hand, from the list and from its own page', async () => {
    const { page, daemon, change } = await bench.show(pieceScenes['no piece'].live, {
      hash: '#piece',
      arrange: ({ pieces }) => pieces.keep(demoPieces, [aileronHeat]),
    });
    const thisNow = page.getByRole('button', { name: /^This piece now/i }).first();
    await thisNow.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => daemon.posted.length).toBe(1);
    await change(pieceScenes['in hand'].live);
    await focused(page).toMatch(/^Left aileron/);
    await change(atBench(null, { inHand: null }));
    await page.getByTestId('not-in-hand').getByRole('button').focus();
    await page.keyboard.press('Enter');
    await change(atBench(onAileron()));
    await focused(page).toMatch(/^Left aileron/);
  }, 30_000);

  it('goes to the form that closes an item, and to where it then stands', async () => {
    const { page, daemon } = await bench.show(scenes['in-stage'], {
      hash: '#records',
      arrange: (arranged) => {
        arranged.items = [item];
      },
    });
    await page.getByTestId('item').getByRole('button').focus();
    await page.keyboard.press('Enter');
    await focused(page).toBe('by');
    await page.keyboard.type('Anna Berg');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Nothing seen.');
    await page.keyboard.press('Tab');
    daemon.answering = () => {
      const closing = { at: '2026-03-04T13:30:00Z', by: 'Anna Berg', found: 'Nothing seen.' };
      return { status: 200, body: { ...item, closing } };
    };
    await page.keyboard.press('Enter');
    await focused(page).toMatch(/closed/i);
  }, 30_000);

  it('goes to where a cement was put away to, and back with it', async () => {
    const { page } = await bench.show(pieceScenes['in hand'].live, {
      hash: '#setup/cements',
      arrange: ({ cements }) => cements.keep(demoCements),
    });
    await page.getByRole('button', { name: `Put it away: ${ribCement.name}` }).focus();
    await page.keyboard.press('Enter');
    await focused(page).toMatch(/put away/i);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: `Take it out again: ${ribCement.name}` }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: `Put it away: ${ribCement.name}` }).waitFor();
    await focused(page).not.toBe('');
  }, 30_000);

  it('goes to the title of a forecast whose rows were dropped, and stays in a field that is begun', async () => {
    const { page } = await bench.show(scenes['in-stage'], { hash: '#setup/air' });
    await tabTo(page, '#forecast-0-temperature');
    await page.keyboard.type('68');
    await page.getByRole('button', { name: 'Drop what I typed' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('forecast-0-temperature');
    await page.getByRole('button', { name: 'Drop what I typed' }).focus();
    await page.keyboard.press('Enter');
    await focused(page).toMatch(/forecast/i);
  }, 30_000);
});
