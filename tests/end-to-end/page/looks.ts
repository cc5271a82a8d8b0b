import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { violations } from '../support/axe.ts';
import type { Shown } from './bench.ts';

/** The sizes and looks at which every state of a view has to be usable, and what is looked for in each. */

export const looks = [
  ['1440 by 900, light', { viewport: { width: 1440, height: 900 }, colorScheme: 'light' }],
  ['1024 by 768, dark', { viewport: { width: 1024, height: 768 }, colorScheme: 'dark' }],
  ['390 by 844, light', { viewport: { width: 390, height: 844 }, colorScheme: 'light', hasTouch: true }],
  [
    '320 by 640, dark',
    { viewport: { width: 320, height: 640 }, colorScheme: 'dark', reducedMotion: 'reduce' },
  ],
] as const;

const LEAST_TARGET = 48;

export interface Amiss {
  readonly violations: readonly string[];
  /** How far it scrolls sideways, px. */
  readonly over: number;
}

export interface Wrong extends Amiss {
  /** Targets that a thumb may miss. */
  readonly small: readonly string[];
}

export const nothingAmiss: Amiss = { violations: [], over: 0 };
export const fine: Wrong = { ...nothingAmiss, small: [] };

/** What is amiss with the page as it stands, with everything in it opened. */
export async function amissWith({ page }: Shown): Promise<Amiss> {
  await page.evaluate(() => {
    for (const part of document.querySelectorAll('details')) part.open = true;
  });
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  return { violations: await violations(page), over: Math.max(0, over) };
}

/** The same, and whether every target can be met by a thumb. */
export async function wrongWith(shown: Shown): Promise<Wrong> {
  const amiss = await amissWith(shown);
  const { page } = shown;
  const small: string[] = [];
  const targets = page.locator('main :is(button, summary, a.target, input):visible');
  for (const target of await targets.all()) {
    const box = await target.boundingBox();
    if (Math.min(box?.width ?? 0, box?.height ?? 0) < LEAST_TARGET)
      small.push(await target.evaluate((element) => element.outerHTML));
  }
  return { ...amiss, small };
}

/** Presses Tab until the focus is there. */
export async function tabTo(page: Page, part: string): Promise<void> {
  const isThere = () => page.locator(part).evaluate((element) => element === document.activeElement);
  for (let i = 0; i < 80 && !(await isThere()); i++) await page.keyboard.press('Tab');
  expect(await isThere()).toBe(true);
}
