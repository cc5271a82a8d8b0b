import type { Page } from 'playwright-core';

/** What a finger would press in the panel over everything at the very moment when it changes, however slow a test is. */

interface Watching {
  pressable: Promise<number>;
}

/**
 * Looks from now on for `selector` to match.
 * @returns how many of the panel's targets took a press when it first did
 */
export async function pressableWhen(page: Page, selector: string): Promise<() => Promise<number>> {
  await page.evaluate((wanted) => {
    const takes = (target: Element): boolean => getComputedStyle(target).pointerEvents !== 'none';
    const pressable = new Promise<number>((resolve) => {
      const look = (_: unknown, observer: MutationObserver): void => {
        if (document.querySelector(wanted) === null) return;
        observer.disconnect();
        resolve([...document.querySelectorAll('.over-parts .target')].filter(takes).length);
      };
      new MutationObserver(look).observe(document, { childList: true, attributes: true, subtree: true });
    });
    Object.assign(globalThis, { pressable });
  }, selector);
  return () => page.evaluate(() => (globalThis as unknown as Watching).pressable);
}
