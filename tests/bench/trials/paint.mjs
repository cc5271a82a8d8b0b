import { setTimeout as delay } from 'node:timers/promises';
import { temperatureFigure } from '../../../build/shared/units/temperature.js';
import { openPage } from '../parts/browser.mjs';
import { freshFolder } from '../parts/folder.mjs';
import { match } from '../parts/match.mjs';
import { monotonicMs, pace } from '../parts/pace.mjs';
import { startProgram } from '../parts/program.mjs';
import { openPty } from '../parts/pty.mjs';
import { quantile } from '../parts/stats.mjs';
import { distinctTemperatures, wireLine } from '../parts/wire.mjs';

/**
 * One device that sends `hz` lines a second, each of which changes the number on the page: from line sent to number
 * painted. A number that the next one overtook before the page was painted is not seen and does not count.
 */
export async function paint({ subject, hz, warmupS, seconds }) {
  const folder = freshFolder();
  const pty = await openPty(folder, 'device');
  const program = await startProgram(subject, { folder, serial: [pty.path] });
  const values = distinctTemperatures(hz);
  const sent = [];
  const feed = pace({
    hz,
    jitter: 0.5,
    send: (i) => {
      const tC = values[i % values.length];
      sent.push({ value: temperatureFigure(tC, 'F'), atMs: monotonicMs() });
      pty.write(wireLine(i, Math.round((i * 1000) / hz), tC));
    },
  });
  const page = await openPage(program.address);
  await delay(warmupS * 1000);
  const fromMs = monotonicMs();
  await delay(seconds * 1000);
  const painted = (await page.painted()).filter(({ atMs }) => atMs >= fromMs);
  feed.stop();
  await page.close();
  await program.stop();
  const { latenciesMs, unknown } = match(sent, painted);
  if (latenciesMs.length < 10) throw new Error(`only ${latenciesMs.length} numbers were painted`);
  return {
    p50Ms: quantile(latenciesMs, 0.5),
    p99Ms: quantile(latenciesMs, 0.99),
    perSecond: latenciesMs.length / seconds,
    unknown,
  };
}
