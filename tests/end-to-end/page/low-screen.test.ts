import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { alarm, live, probe } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';

/** A screen so low, or zoomed so far in, that the panel over everything scrolls with the page. */

const bench = Bench.ofFile();

const fourAlarms = live(
  [probe(383)],
  [
    alarm(),
    alarm({ kind: 'wet-cement', priority: 2, probe: null, peakC: null }),
    alarm({ kind: 'left-alone', priority: 2, probe: null, peakC: null }),
    alarm({ kind: 'above-band', priority: 1, probe: null, peakC: null }),
  ],
);

/** What has the focus, and where it stands if that is not wholly in sight. */
const outOfSight = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return null;
    const { left, right, top, bottom } = at.getBoundingClientRect();
    const over = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    const isClear = over !== null && (at.contains(over) || over.contains(at));
    return top >= 0 && bottom <= innerHeight && isClear
      ? null
      : `${at.textContent}: ${Math.round(top)} to ${Math.round(bottom)} of ${innerHeight}`;
  });

describe.each([
  [512, 384],
  [640, 400],
])('on %d by %d, with four alarms', (width, height) => {
  it.each(['#iron', '#piece', '#setup/screen'])(
    'what the keys come to is in sight on %s',
    async (hash) => {
      const { page } = await bench.show(fourAlarms, { hash, viewport: { width, height } });
      const amiss: string[] = [];
      let stops = 0;
      for (const key of ['Tab', 'Shift+Tab']) {
        for (let i = 0; i < 60; i += 1) {
          await page.keyboard.press(key);
          if (await page.evaluate(() => document.activeElement === document.body)) break;
          stops += 1;
          const wrong = await outOfSight(page);
          if (wrong !== null) amiss.push(`${key} ${wrong}`);
        }
      }
      expect(amiss).toEqual([]);
      expect(stops).toBeGreaterThan(20);
    },
    60_000,
  );
});
