import { EventEmitter, on } from 'node:events';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import type { Live } from '../../../shared/messages/live.ts';
import type { StreamMessage } from '../../../shared/messages/stream.ts';
import { launchBrowser, painted } from '../support/page.ts';
import { FakeDaemon } from './fake-daemon.ts';

/** The built page in a real browser, before a stand-in for the daemon. */

const root = join(import.meta.dirname, '../../..');
const pages = join(root, 'build/dashboard');

export class Bench {
  #browser: Browser | null = null;
  readonly #open: (() => Promise<void>)[] = [];

  private constructor() {}

  /**
   * For the tests of a file: its browser is there before the first, its pages go after each, and it after the last.
   * @param browserArgs what its browser is started with beside what every one is
   */
  static ofFile(browserArgs: readonly string[] = []): Bench {
    const bench = new Bench();
    beforeAll(async () => {
      bench.#browser = await launchBrowser(browserArgs);
    }, 120_000);
    afterEach(() => bench.clear());
    afterAll(() => bench.#browser?.close());
    return bench;
  }

  /** A page before a daemon that says `live`; what goes wrong in it is collected. */
  async show(live: Live, options: ShowOptions = {}): Promise<Shown> {
    const { before, hash = '', arrange, ...rest } = options;
    const daemon = new FakeDaemon(pages, live);
    arrange?.(daemon);
    await daemon.start();
    if (this.#browser === null) throw new Error('a page is shown from within a test');
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
    const hasCome = snapshotsOf(page);
    await page.goto(`${daemon.address}/${hash}`);
    await page.locator('main > *').first().waitFor();
    const change = async (next: Live): Promise<void> => {
      await hasCome(daemon.show(next));
      await painted(page);
    };
    return { daemon, page, complaints, change };
  }

  async clear(): Promise<void> {
    for (const close of this.#open.splice(0)) await close();
  }
}

/**
 * Looks at what a page is sent, over whatever connection: one that could not listen for a while has connected anew.
 * @returns waits for a snapshot as new as the one that was said
 */
function snapshotsOf(page: Page): (said: Said) => Promise<void> {
  const come = new EventEmitter();
  page.on('websocket', (socket) =>
    socket.on('framereceived', ({ payload }) => {
      const text = payload.toString();
      if (text.includes('"kind":"snapshot"')) come.emit('snapshot', JSON.parse(text));
    }),
  );
  return async ({ epoch, seq }) => {
    for await (const [one] of on(come, 'snapshot') as AsyncIterable<[Said]>)
      if (one.epoch === epoch && one.seq >= seq) return;
  };
}

type Said = Pick<StreamMessage, 'epoch' | 'seq'>;

export interface ShowOptions extends BrowserContextOptions {
  /** A script that runs before the page's own. */
  readonly before?: string;
  /** The view to begin with, for example `#piece`. */
  readonly hash?: string;
  /** What the daemon has before the page is opened. */
  readonly arrange?: (daemon: FakeDaemon) => void;
}

export interface Shown {
  readonly daemon: FakeDaemon;
  readonly page: Page;
  /** Everything is now like this, and the page has painted it. */
  readonly change: (live: Live) => Promise<void>;
  /** Errors of the page's own: exceptions, and what its content security policy refused. */
  readonly complaints: string[];
}
