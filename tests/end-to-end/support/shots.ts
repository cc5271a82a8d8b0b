import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { painted, part } from './page.ts';

/** Shoots a part of the page, wide and narrow, light and dark, where SOLEPLATE_SHOTS names a folder to look at. */
export type Shoot = (page: Page, name: string, what?: string) => Promise<void>;

export const shooting =
  (of: string, usual: string): Shoot =>
  async (page, name, what = usual) => {
    const folder = process.env['SOLEPLATE_SHOTS'];
    if (folder === undefined) return;
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      for (const [width, height] of [
        [1440, 900],
        [1024, 768],
        [390, 844],
      ] as const) {
        // So high that nothing that stays in sight covers what is shot.
        await page.setViewportSize({ width, height: Math.max(height, 2600) });
        // Painted once more in the new size.
        await painted(page);
        await part(page, what).screenshot({
          path: join(folder, `${of}-${name}-${width}-${colorScheme}.png`),
        });
      }
    }
    await page.emulateMedia({ colorScheme: 'light' });
    await page.setViewportSize({ width: 1280, height: 720 });
  };
