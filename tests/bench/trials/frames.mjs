import { setTimeout as delay } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import { CHROMIUM } from '../parts/browser.mjs';
import { freshFolder } from '../parts/folder.mjs';
import { pace } from '../parts/pace.mjs';
import { startProgram } from '../parts/program.mjs';
import { openPtys } from '../parts/pty.mjs';
import { quantile } from '../parts/stats.mjs';
import { regulatedC, wireLine } from '../parts/wire.mjs';

const DEVICES = 4;
/** Of a display that paints 60 times a second, us. */
const FRAME_US = 1_000_000 / 60;

/**
 * What the page's main thread works in each frame, ms, while four probes stream on a processor slowed down by
 * `throttle`. A frame in which nothing was to be done doesn't count, so the figure is of the busy ones alone.
 */
export async function frames({ subject, hz, warmupS, seconds, throttle }) {
  const folder = freshFolder();
  const ptys = await openPtys(folder, DEVICES);
  const program = await startProgram(subject, { folder, serial: ptys.map((p) => p.path) });
  const feed = pace({
    hz: hz * DEVICES,
    jitter: 0.3,
    send: (i) => {
      const n = Math.floor(i / DEVICES);
      ptys[i % DEVICES].write(wireLine(n, Math.round((n * 1000) / hz), regulatedC(i % DEVICES, n / hz)));
    },
  });
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  const page = await browser.newPage();
  await page.goto(program.address);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: throttle });
  await delay(warmupS * 1000);
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline'] });
  await delay(seconds * 1000);
  const busyMs = busyFrames(JSON.parse((await browser.stopTracing()).toString()).traceEvents);
  feed.stop();
  await browser.close();
  await program.stop();
  if (busyMs.length < seconds) throw new Error(`only ${busyMs.length} frames had work in them`);
  return {
    p50Ms: quantile(busyMs, 0.5),
    p95Ms: quantile(busyMs, 0.95),
    worstMs: Math.max(...busyMs),
    busyFrames: busyMs.length / seconds,
  };
}

/** The main thread's tasks by the frame in which they begin, ms a frame. */
function busyFrames(events) {
  const mains = new Set(
    events.filter((e) => e.name === 'thread_name' && e.args.name === 'CrRendererMain').map(threadOf),
  );
  const byThread = new Map([...mains].map((thread) => [thread, []]));
  for (const event of events)
    if (event.name === 'RunTask' && event.ph === 'X') byThread.get(threadOf(event))?.push(event);
  // Chromium keeps a spare renderer at hand, which idles.
  const tasks = [...byThread.values()].toSorted((a, b) => b.length - a.length)[0] ?? [];
  const frames = new Map();
  for (const { ts, dur } of tasks) {
    const frame = Math.floor(ts / FRAME_US);
    frames.set(frame, (frames.get(frame) ?? 0) + dur / 1000);
  }
  return [...frames.values()];
}

const threadOf = ({ pid, tid }) => `${pid}:${tid}`;
