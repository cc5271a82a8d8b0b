import { existsSync } from 'node:fs';
import { type Browser, chromium, type Locator, type Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { until } from './until.ts';

/** The program's page in a real Chromium. */

const args = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Without its window it takes half the work; either is the same Chromium. */
const installed = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'];

/** A browser of the tests' own. @param more arguments beside those that every one is started with */
export function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = process.env['CHROMIUM'] ?? installed.find((path) => existsSync(path));
  if (executablePath === undefined)
    throw new Error(`No Chromium at ${installed.join(' or ')}: say where it is in CHROMIUM.`);
  return chromium.launch({ executablePath, args: [...args, ...more] });
}

/** Opens a page that closes with its test. */
export async function openPage(
  browser: Browser,
  address: string,
  colorScheme: 'light' | 'dark' = 'light',
): Promise<Page> {
  const context = await browser.newContext({ colorScheme });
  onTestFinished(() => context.close());
  const page = await context.newPage();
  await page.addInitScript(notePlates);
  await page.goto(address);
  return page;
}

/** What stood where a plate temperature belongs, and from when on by the wall clock, ms since 1970. */
interface Shown {
  readonly text: string;
  readonly atMs: number;
}

/** Runs in the page: notes every change of the plate temperature when it is made, however late somebody asks. */
function notePlates(): void {
  const shown: Shown[] = [];
  Object.assign(globalThis, { shownPlates: shown });
  const look = (): void => {
    const text = document.querySelector('[data-testid="plate"]')?.textContent ?? '';
    if (text !== shown.at(-1)?.text) shown.push({ text, atMs: Date.now() });
  };
  new MutationObserver(look).observe(document, { childList: true, characterData: true, subtree: true });
}

/** When the page last began to show something that is no number, ms since 1970. */
export async function lostAtMs(page: Page): Promise<number> {
  const shown = await page.evaluate(() => (globalThis as unknown as { shownPlates: Shown[] }).shownPlates);
  const number = shown.findLastIndex(({ text }) => isNumber(text));
  return shown[number + 1]?.atMs ?? Number.POSITIVE_INFINITY;
}

/** When the page last began to show a number after it had shown none, ms since 1970. */
export async function backAtMs(page: Page): Promise<number> {
  const shown = await page.evaluate(() => (globalThis as unknown as { shownPlates: Shown[] }).shownPlates);
  const none = shown.findLastIndex(({ text }) => !isNumber(text));
  return shown[none + 1]?.atMs ?? Number.POSITIVE_INFINITY;
}

/** Waits until the page as it is now has been painted. */
export const painted = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

export const part = (page: Page, name: string): Locator => page.locator(`[data-testid="${name}"]`);

/** What stands where the plate temperature belongs: a number, or the name of what is missing. */
export const plateText = (page: Page): Promise<string> => part(page, 'plate').innerText({ timeout: 10_000 });

export const isNumber = (text: string): boolean => /^-?\d+$/.test(text);

/** Waits until the page shows a plate temperature that `isRight`, and gives it. */
export const plateNumber = (page: Page, what: string, isRight: (shown: number) => boolean): Promise<number> =>
  until(`the page shows a plate ${what}`, async () => {
    const text = await plateText(page);
    return isNumber(text) && isRight(Number(text)) ? Number(text) : null;
  });

/** Waits until nothing on the page looks like a live number, and gives what stands there instead. */
export const noNumber = (page: Page): Promise<string> =>
  until('the page shows no plate as live', async () => {
    const text = await plateText(page);
    const others = await part(page, 'other-plate').allInnerTexts();
    return [text, ...others].some((one) => /\d/.test(one)) ? null : text;
  });

export const standingKind = (page: Page): Promise<string | null> =>
  part(page, 'standing').first().getAttribute('data-kind');

/** An alarm's card, in one state or in any. */
export const alarmCard = (page: Page, kind: string, state?: string): Locator =>
  page.locator(
    `[data-testid="alarm"][data-kind="${kind}"]${state === undefined ? '' : `[data-state="${state}"]`}`,
  );
