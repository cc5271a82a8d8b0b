import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { Live } from '../../../shared/messages/live.ts';
import { launchBrowser } from '../support/page.ts';
import { FakeDaemon } from './fake-daemon.ts';

/** The built page in a real browser, before a stand-in for the daemon. */

const root = join(import.meta.dirname, '../../..');
const pages = join(root, 'build/dashboard');

export class Bench {
  readonly #browser: Browser;
  readonly #axe: string;
  readonly #open: (() => Promise<void>)[] = [];

  private constructor(browser: Browser, axe: string) {
    this.#browser = browser;
    this.#axe = axe;
  }

  static async make(): Promise<Bench> {
    const axe = await readFile(join(root, 'node_modules/axe-core/axe.min.js'), 'utf8');
    return new Bench(await launchBrowser(), axe);
  }

  /** A page before a daemon that says `live`; what goes wrong in it is collected. */
  async show(live: Live, options: BrowserContextOptions & { readonly before?: string } = {}): Promise<Shown> {
    const { before, ...rest } = options;
    const daemon = new FakeDaemon(pages, live);
    await daemon.start();
    const context = await this.#browser.newContext({ viewport: { width: 1024, height: 768 }, ...rest });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' && !/ERR_|Failed to load/.test(message.text()))
        complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    if (before !== undefined) await page.addInitScript(before);
    this.#open.push(async () => {
      await context.close();
      await daemon.stop();
    });
    const connected = page.waitForEvent('websocket');
    await page.goto(daemon.address);
    const socket = await connected;
    await page.locator('main > *').first().waitFor();
    const change = async (next: Live): Promise<void> => {
      const arrived = socket.waitForEvent('framereceived', ({ payload }) => payload.includes('"snapshot"'));
      daemon.show(next);
      await arrived;
      await page.evaluate(async () => {
        for (let i = 0; i < 2; i++) await new Promise(requestAnimationFrame);
      });
    };
    return { daemon, page, complaints, change };
  }

  /** What axe-core finds wrong, as "rule: where". */
  async violations(page: Page): Promise<string[]> {
    await page.evaluate(this.#axe);
    return await page.evaluate(async () => {
      const axe = (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe;
      const { violations } = await axe.run();
      return violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`,
      );
    });
  }

  async clear(): Promise<void> {
    for (const close of this.#open.splice(0)) await close();
  }

  async close(): Promise<void> {
    await this.clear();
    await this.#browser.close();
  }
}

interface AxeResults {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly target: string[] }[];
  }[];
}

export interface Shown {
  readonly daemon: FakeDaemon;
  readonly page: Page;
  /** Everything is now like this, and the page has painted it. */
  readonly change: (live: Live) => Promise<void>;
  /** Errors of the page's own: exceptions, and what its content security policy refused. */
  readonly complaints: string[];
}
