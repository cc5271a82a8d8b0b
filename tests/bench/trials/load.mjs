import { setTimeout as delay } from 'node:timers/promises';
import { freshFolder } from '../parts/folder.mjs';
import { listen } from '../parts/listen.mjs';
import { pace } from '../parts/pace.mjs';
import { startProgram } from '../parts/program.mjs';
import { openPtys } from '../parts/pty.mjs';
import { median } from '../parts/stats.mjs';
import { regulatedC, wireLine } from '../parts/wire.mjs';

const DEVICES = 4;
/** Memory is noted this often, ms. */
const NOTE_MS = 1000;
/** What was sent last may not be kept yet: two seconds of lines. */
const NOT_YET_S = 2;

/**
 * Four devices that each send `hz` lines a second, one client on the stream, all kept. CPU and memory of the program
 * over `seconds`, after `warmupS` in which it compiles its hot code.
 */
export async function load({ subject, hz, warmupS, seconds, coalesceMs }) {
  const folder = freshFolder();
  const ptys = await openPtys(folder, DEVICES);
  const program = await startProgram(subject, { folder, serial: ptys.map((p) => p.path), coalesceMs });
  let messages = 0;
  await listen(program.address, () => {
    messages += 1;
  });
  const feed = pace({ hz: hz * DEVICES, jitter: 0.3, send: (i) => sendTo(ptys, i, hz) });
  await delay(warmupS * 1000);
  const keptBefore = await program.kept();
  const from = { ...program.cpu(), lines: feed.sent, messages };
  const rss = await noteMemory(program, seconds);
  const to = { ...program.cpu(), lines: feed.sent, messages };
  const lines = to.lines - from.lines;
  const kept = (await program.kept()) - keptBefore;
  feed.stop();
  if (kept < lines - NOT_YET_S * hz * DEVICES)
    throw new Error(`of ${lines} lines only ${kept} were kept: this measures another thing.`);
  await program.stop();
  return {
    cpuPct: (to.allMs - from.allMs) / (seconds * 10),
    usPerLine: ((to.allMs - from.allMs) * 1000) / lines,
    mainUsPerLine: ((to.mainMs - from.mainMs) * 1000) / lines,
    messages: (to.messages - from.messages) / seconds,
    ...memoryOf(rss),
  };
}

function sendTo(ptys, i, hz) {
  const device = i % DEVICES;
  const n = Math.floor(i / DEVICES);
  const s = n / hz;
  ptys[device].write(wireLine(n, Math.round(s * 1000), regulatedC(device, s)));
}

async function noteMemory(program, seconds) {
  const rss = [];
  for (let s = 0; s < seconds; s += NOTE_MS / 1000) {
    await delay(NOTE_MS);
    rss.push(program.rssMiB());
  }
  return rss;
}

/** Around the middle and at the end, MiB, each the median over a tenth of the time. */
function memoryOf(rss) {
  const tenth = Math.max(1, Math.round(rss.length / 10));
  const middle = Math.floor((rss.length - tenth) / 2);
  return {
    middleMiB: median(rss.slice(middle, middle + tenth)),
    endMiB: median(rss.slice(-tenth)),
  };
}
