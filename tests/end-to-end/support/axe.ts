import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResults {
  /** What it looked at and found right. */
  readonly passes: readonly { readonly id: string }[];
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
}

/** What axe-core says of the page as it stands. */
export async function axeResults(page: Page): Promise<AxeResults> {
  // The page's security policy refuses a script element; a script that is evaluated is not one.
  await page.evaluate(axe);
  return await page.evaluate(() => {
    const { axe: checker } = globalThis as unknown as { axe: { run(): Promise<AxeResults> } };
    return checker.run();
  });
}

/** What axe-core finds wrong with the page as it stands, one text a place. */
export const violations = async (page: Page): Promise<readonly string[]> =>
  (await axeResults(page)).violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary = '' }) => `${id}: ${help}\n${html}\n${failureSummary}`),
  );
