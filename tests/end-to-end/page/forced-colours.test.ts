import { describe, expect, it } from 'vitest';
import type { Live } from '../../../shared/messages/live.ts';
import { cementList, coatsAnswer, fourCoats } from '../../fixtures/coats.ts';
import { pieceScenes } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, wingHeat } from '../../fixtures/pieces.ts';
import { alarm, scenes } from '../../fixtures/scenes.ts';
import { violations } from '../support/axe.ts';
import { painted } from '../support/page.ts';
import { unseenWords } from '../support/painted.ts';
import { Bench, type Shown } from './bench.ts';

/**
 * The user's own colours, a few of the system's in place of the page's: behind text the browser paints the page's ground,
 * so that words on a ground of another colour may be gone though every computed style is right.
 */

const bench = Bench.ofFile();

const places: readonly (readonly [hash: string, live: Live])[] = [
  ['#iron', scenes['in-stage']],
  ['#iron', scenes['over-limit']],
  ['#piece', pieceScenes.alarm.live],
  ['#bench', pieceScenes['in hand'].live],
  ['#setup/screen', scenes['in-stage']],
];

const show = (hash: string, live: Live, colorScheme: 'light' | 'dark', width: number): Promise<Shown> =>
  bench.show(live, {
    hash,
    forcedColors: 'active',
    colorScheme,
    // So high that the whole view is on the screen.
    viewport: { width, height: 3000 },
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces, [aileronHeat, wingHeat]);
      daemon.cements.keep(cementList.cements);
      daemon.coats.coats = coatsAnswer(fourCoats);
    },
  });

describe.each(['light', 'dark'] as const)('in the user’s own colours, %s', (scheme) => {
  it.each([1024, 390])(
    'every word can be seen, at a width of %d',
    async (width) => {
      const found: unknown[] = [];
      for (const [hash, live] of places) {
        const { page } = await show(hash, live, scheme, width);
        // What is read for itself may come before the iron is known, and the view is laid out anew then.
        await page.locator('[data-testid=link][data-link=live]').waitFor();
        await page.waitForLoadState('networkidle');
        await painted(page);
        found.push([hash, await unseenWords(page)]);
        await bench.clear();
      }
      expect(found).toEqual(places.map(([hash]) => [hash, []]));
      const { page, daemon } = await show('#iron', scenes['over-limit'], scheme, width);
      daemon.freeze();
      await page.getByTestId('daemon-lost').waitFor();
      expect(await unseenWords(page)).toEqual([]);
    },
    120_000,
  );

  it('one view of five is underlined as the one that is shown', async () => {
    const { page } = await show('#iron', scenes['in-stage'], scheme, 1024);
    const underlined = await page
      .locator('.nav-way')
      .evaluateAll((ways) =>
        ways
          .filter((way) => getComputedStyle(way).borderBottomStyle !== 'none')
          .map((way) => way.textContent),
      );
    expect(underlined).toEqual(['Iron']);
  }, 30_000);

  it('the hatching keeps its meaning: it differs from every ground that it stands on', async () => {
    const { page, change } = await show('#iron', scenes['over-limit'], scheme, 1024);
    expect(await violations(page)).toEqual([]);
    const strokeOf = (name: string) =>
      page.locator(`.hatch-lines--${name}`).evaluate((path) => getComputedStyle(path).stroke);
    const groundOf = (part: string) =>
      page
        .locator(part)
        .first()
        .evaluate((element) => getComputedStyle(element).backgroundColor);
    expect(await strokeOf('beyond')).not.toBe(await groundOf('html'));
    const edge = '[data-testid=alarm] .alarm-edge';
    expect(await strokeOf('act-now')).not.toBe(await groundOf(edge));
    await change({ ...scenes['over-limit'], alarms: [alarm({ state: 'acknowledged' })] });
    expect(await strokeOf('act-now')).not.toBe(await groundOf(edge));
  }, 30_000);
});
