import type { CDPSession, Page } from 'playwright-core';
import { fToC } from '../../../shared/units/temperature.ts';
import { alarm, BIG, device, iron, live, probe, SMALL } from '../../fixtures/scenes.ts';
import { painted } from '../support/page.ts';
import type { Bench, Shown } from './bench.ts';

/** A page that stays open for hours, in minutes: each message of readings moves its clock on by a tenth of a second. */

/** What the page holds, garbage collected. */
export interface Held {
  readonly atMin: number;
  readonly heapMiB: number;
  readonly nodes: number;
  readonly listeners: number;
}

const irons = [
  iron({ probes: [BIG, 'bench-board/3'] }),
  iron({ id: 'small', name: 'Small iron', probes: [SMALL, 'bench-board/4'] }),
];
const probesAt = (swingF: number) =>
  irons.flatMap(({ id, probes }) => probes.map((one, n) => probe(290 + swingF + n, { id: one, iron: id })));

const STEP_MS = 100;
const STEPS_A_MIN = 60_000 / STEP_MS;

/** Runs in the page before its own scripts. */
const passing = `{
  const now = performance.now.bind(performance);
  const wall = Date.now;
  let passedMs = 0;
  performance.now = () => now() + passedMs;
  Date.now = () => wall() + passedMs;
  globalThis.steps = 0;
  globalThis.WebSocket = class extends WebSocket {
    constructor(...given) {
      super(...given);
      this.addEventListener('message', ({ data }) => {
        if (!data.includes('"kind":"readings"')) return;
        passedMs += ${STEP_MS};
        globalThis.steps += 1;
      });
    }
  };
}`;

/** Lets `minutes` of a working day pass before a page, and looks at what it holds after each of `atMin`. */
export async function heldOver(bench: Bench, atMin: readonly number[]): Promise<readonly Held[]> {
  const shown = await bench.show(live(probesAt(0), [], { irons }), { before: passing });
  const cdp = await shown.page.context().newCDPSession(shown.page);
  shown.daemon.freeze();
  const held: Held[] = [];
  const minutes = Math.max(...atMin);
  for (let min = 1; min <= minutes; min++) {
    await passMinute(shown, min);
    if (atMin.includes(min)) held.push({ atMin: min, ...(await holds(cdp)) });
  }
  return held;
}

/** Four probes at 10 Hz, the counters every two seconds, and an alarm now and then. */
async function passMinute({ daemon, page }: Shown, min: number): Promise<void> {
  const before = await stepsOf(page);
  for (let i = 0; i < STEPS_A_MIN; i++) {
    daemon.say({ kind: 'readings', probes: probesAt(20 * Math.sin((i / STEPS_A_MIN) * 2 * Math.PI)) });
    if (i % 20 !== 0) continue;
    const { situation } = live([], [], {
      irons,
      devices: [device({ linesAccepted: min * STEPS_A_MIN + i })],
    });
    daemon.say({ kind: 'situation', situation });
  }
  if (min % 5 === 0) {
    const raised = alarm({ peakC: fToC(386) });
    daemon.say({ kind: 'alarm', change: 'raised', alarm: raised });
    daemon.say({ kind: 'alarm', change: 'acknowledged', alarm: { ...raised, state: 'acknowledged' } });
    daemon.say({ kind: 'alarm', change: 'cleared', alarm: { ...raised, state: 'normal' } });
  }
  // What was said last has been shown once a reading after it has been painted.
  daemon.say({ kind: 'readings', probes: probesAt(0) });
  while ((await stepsOf(page)) < before + STEPS_A_MIN + 1) await page.waitForTimeout(5);
  await painted(page);
}

const stepsOf = (page: Page): Promise<number> =>
  page.evaluate(() => (globalThis as unknown as { steps: number }).steps);

async function holds(cdp: CDPSession): Promise<Omit<Held, 'atMin'>> {
  for (let i = 0; i < 3; i++) await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize } = await cdp.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners } = await cdp.send('Memory.getDOMCounters');
  return { heapMiB: usedSize / 2 ** 20, nodes, listeners: jsEventListeners };
}
