import { describe, expect, it } from 'vitest';
import {
  air,
  cementList,
  coatsAnswer,
  dryAll,
  endedCoat,
  fourCoats,
  startedLately,
} from '../../fixtures/coats.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron, wingHeat } from '../../fixtures/pieces.ts';
import { alarm } from '../../fixtures/scenes.ts';
import { Bench, type ShowOptions } from './bench.ts';
import { amissWith, looks, nothingAmiss } from './looks.ts';

/** The Bench view and coats on other views in each state: without a violation, at every width, in light and dark. */

const bench = Bench.ofFile();

const all = [...fourCoats, dryAll];
const lately = { started: [startedLately], ended: [1, 2, 3, 4, 5].map(endedCoat) };
const withCoats = (options: ShowOptions): ShowOptions => ({
  hash: '#bench',
  arrange: (daemon) => {
    daemon.pieces.keep(demoPieces, [aileronHeat, wingHeat]);
    daemon.cements.keep(cementList.cements);
    daemon.air.answer = air;
    daemon.coats.coats = coatsAnswer(all, lately);
  },
  ...options,
});

const now = atBench(onAileron());
const revised = (coatRevision: number) => atBench(onAileron(), { coatRevision });

describe.each(looks)('at %s', (_, options) => {
  it('every state passes axe-core, breaks no policy and never scrolls sideways', async () => {
    const shown = await bench.show(now, withCoats(options));
    const { page, daemon, change } = shown;
    await page.getByTestId('coat').first().waitFor();
    await page.locator('[data-testid=start-coats] [data-area]').first().click();
    await page.getByRole('button', { name: 'so long ago' }).click();
    const found: Record<string, unknown> = { coats: await amissWith(shown) };
    const views = [
      ['#piece', '[data-area] [fill^="url(#hatch-stage"]'],
      ['#bench/left-wing-panel-outer', '[data-area="1-cloth-r4c9"]'],
      ['#setup/screen', '[data-testid=spoken]'],
      ['#iron', '[data-testid=standing]'],
    ] as const;
    for (const [hash, part] of views) {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await page.locator(part).first().waitFor({ state: 'attached' });
      found[hash] = await amissWith(shown);
    }
    daemon.coats.coats = coatsAnswer(all, {
      revision: 2,
      fire: ['coat-may', 'coat-due'],
      clock: { at: '2026-03-04T13:00:00Z', byMs: 7_200_000, while: 'running' },
      amiss: [{ coat: 'coat-lost', text: 'The coat on Left aileron is of a cement that is gone.' }],
    });
    await change({ ...revised(2), alarms: [alarm({ kind: 'fire-hazard', probe: null, peakC: null })] });
    await page.getByTestId('fire-question').waitFor();
    found['fire question'] = await amissWith(shown);
    await page.evaluate(() => {
      location.hash = '#bench';
    });
    await page.getByTestId('coats-clock').waitFor();
    found['doubts'] = await amissWith(shown);
    daemon.coats.coats = coatsAnswer([], { revision: 3 });
    await change(revised(3));
    await expect.poll(() => page.getByTestId('coat').count()).toBe(0);
    found['no coats'] = await amissWith(shown);
    const states = ['coats', ...views.map(([hash]) => hash), 'fire question', 'doubts', 'no coats'];
    expect(found).toEqual(Object.fromEntries(states.map((name) => [name, nothingAmiss])));
    expect(shown.complaints).toEqual([]);
  }, 180_000);
});

describe('targets', () => {
  it.each(['#bench', '#piece'])(
    'are at least 48 px either way, areas of a side 40: %s',
    async (hash) => {
      const options = { viewport: { width: 320, height: 640 } };
      const { page, daemon, change } = await bench.show(now, { ...withCoats(options), hash });
      await page.getByTestId('coat').first().waitFor();
      daemon.coats.coats = coatsAnswer(all, { ...lately, revision: 2, fire: ['coat-may'] });
      await change(revised(2));
      await page.getByTestId('fire-question').waitFor();
      for (const target of await page.locator('button:visible, summary:visible, a.target:visible').all()) {
        const box = await target.boundingBox();
        const least = (await target.getAttribute('data-area')) === null ? 48 : 40;
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(least);
      }
    },
    60_000,
  );
});
