import { describe, expect, it } from 'vitest';
import {
  atBench,
  heatWithNotes,
  item,
  type PieceSceneName,
  pieceScenes,
} from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron, wingHeat } from '../../fixtures/pieces.ts';
import { Bench, type ShowOptions } from './bench.ts';
import { amissWith, looks, nothingAmiss } from './looks.ts';

/** The Piece view in each of its states: without a violation, at every width, in light and dark. */

const bench = Bench.ofFile();

const names = Object.keys(pieceScenes) as PieceSceneName[];

const withPieces = (options: ShowOptions): ShowOptions => ({
  hash: '#piece',
  arrange: (daemon) => {
    daemon.pieces.keep(demoPieces, [aileronHeat, wingHeat]);
    daemon.items = [item];
  },
  ...options,
});

describe.each(looks)('at %s', (_, options) => {
  it('every state passes axe-core, breaks no policy and never scrolls sideways', async () => {
    const shown = await bench.show(pieceScenes['in hand'].live, withPieces(options));
    await shown.page.getByTestId('sheet-1').waitFor();
    const found: Record<string, unknown> = {};
    for (const name of names) {
      await shown.change(pieceScenes[name].live);
      found[name] = await amissWith(shown);
    }
    const { daemon, page, change } = shown;
    daemon.pieces.keep([], [heatWithNotes]);
    await change(atBench(onAileron(), { heatRevision: 2 }, 252, 'final'));
    await page.getByTestId('order').waitFor();
    await page.getByRole('button', { name: 'Overrule the order' }).click();
    found['order and items'] = await amissWith(shown);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    found['daemon lost'] = await amissWith(shown);
    const all = [...names, 'order and items', 'daemon lost'];
    expect(found).toEqual(Object.fromEntries(all.map((name) => [name, nothingAmiss])));
    expect(shown.complaints).toEqual([]);
  }, 180_000);

  it('so do the pages behind it', async () => {
    const shown = await bench.show(pieceScenes['in hand'].live, withPieces(options));
    const found: Record<string, unknown> = {};
    const ways = [
      ['#piece/all', 'pieces'],
      ['#piece/new', 'editor'],
      ['#piece/left-aileron/edit', 'editor'],
      ['#piece/left-wing-panel-outer', 'sheet-2'],
      ['#piece/left-aileron/visits', 'visits'],
      ['#piece/shrinkage', 'shrinkage'],
    ] as const;
    for (const [hash, part] of ways) {
      await shown.page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await shown.page.getByTestId(part).waitFor();
      found[hash] = await amissWith(shown);
    }
    expect(found).toEqual(Object.fromEntries(ways.map(([hash]) => [hash, nothingAmiss])));
    expect(shown.complaints).toEqual([]);
  }, 120_000);
});

describe('targets', () => {
  it.each(['#piece', '#piece/all', '#piece/new', '#piece/left-aileron/visits'])(
    'are at least 48 px either way, areas of a side 40: %s',
    async (hash) => {
      const options = { viewport: { width: 320, height: 640 } };
      const { page } = await bench.show(pieceScenes['in hand'].live, { ...withPieces(options), hash });
      await page.locator('.piece > *').first().waitFor();
      if (hash === '#piece') await page.getByTestId('sheet-1').waitFor();
      for (const target of await page.locator('button:visible, summary:visible, a.target:visible').all()) {
        const box = await target.boundingBox();
        const least = (await target.getAttribute('data-area')) === null ? 48 : 40;
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(least);
      }
    },
    60_000,
  );
});
