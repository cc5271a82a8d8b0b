import { chromium } from 'playwright-core';
import { monotonicMs } from './pace.mjs';

export const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/**
 * Opens a program's page in a Chromium of its own and notes each number that is painted where the plate temperature
 * stands.
 */
export async function openPage(address) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  const page = await browser.newPage();
  await page.addInitScript(notePaints);
  await page.goto(address);
  await page.waitForFunction(() =>
    /^\d+$/.test(document.querySelector('[data-testid="plate"]')?.textContent ?? ''),
  );
  const zeroMs = await pageZeroMs(page);
  return {
    /** What was painted and when, by the machine's monotonic clock. */
    painted: async () => {
      const paints = await page.evaluate(() => globalThis.paints);
      return paints.map(({ value, atMs }) => ({ value, atMs: atMs + zeroMs }));
    },
    close: () => browser.close(),
  };
}

/**
 * Runs in the page. A message that is posted in a frame's callbacks comes right after that frame was painted. A number that
 * changes in such a callback is painted by the same frame; for any other a frame is asked for.
 */
function notePaints() {
  globalThis.paints = [];
  const { port1, port2 } = new MessageChannel();
  let text = '';
  let asked = false;
  let isInFrame = false;
  port1.addEventListener('message', ({ data }) => {
    if (data === 'frame') isInFrame = false;
    else globalThis.paints.push({ value: text, atMs: performance.now() });
  });
  port1.start();
  const ownFrame = globalThis.requestAnimationFrame.bind(globalThis);
  globalThis.requestAnimationFrame = (work) =>
    ownFrame((time) => {
      if (!isInFrame) port2.postMessage('frame');
      isInFrame = true;
      work(time);
    });
  let figure = null;
  const noteNow = () => {
    asked = false;
    text = figure.textContent;
    port2.postMessage(null);
  };
  const changed = () => {
    if (isInFrame) noteNow();
    else if (!asked) {
      asked = true;
      requestAnimationFrame(noteNow);
    }
  };
  const observer = new MutationObserver(changed);
  setInterval(() => {
    if (figure?.isConnected) return;
    figure = document.querySelector('[data-testid="plate"]');
    observer.disconnect();
    if (figure !== null) observer.observe(figure, { childList: true, characterData: true, subtree: true });
  }, 100);
}

/** What the machine's monotonic clock showed at the page's zero, ms: Chromium tells it, and it is checked. */
async function pageZeroMs(page) {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const { metrics } = await session.send('Performance.getMetrics');
  const zeroMs = metrics.find(({ name }) => name === 'NavigationStart').value * 1000;
  const beforeMs = monotonicMs();
  const pageMs = await page.evaluate(() => performance.now());
  const afterMs = monotonicMs();
  const CLOCK_STEP_MS = 0.2;
  if (zeroMs + pageMs < beforeMs - CLOCK_STEP_MS || zeroMs + pageMs > afterMs + CLOCK_STEP_MS)
    throw new Error("Chromium's clock is not the machine's monotonic clock here: latencies can't be told.");
  return zeroMs;
}
