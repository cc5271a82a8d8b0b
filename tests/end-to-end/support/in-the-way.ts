import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { violations } from './axe.ts';

/** What keeps anybody out: by axe-core, by sideways scroll on a narrow screen, by targets that are too small. */
export async function expectNothingInTheWay(page: Page): Promise<void> {
  await page.setViewportSize({ width: 320, height: 640 });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violations(page), colorScheme).toEqual([]);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('button, summary, a, input, select')]
      .map((one) => ({ text: one.outerHTML.slice(0, 80), box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < 48)
      .map(({ text }) => text),
  );
  expect(small).toEqual([]);
  await page.setViewportSize({ width: 1280, height: 720 });
}
