import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, describe, expect, it } from 'vitest';
import { streamLimits } from '../../daemon/web/stream/limits.ts';
import { ManualTimers } from '../unit/web/support/manual-timers.ts';
import { rawStream } from '../unit/web/support/raw.ts';
import { type Running, running, streamClients, TestClient } from '../unit/web/support/running.ts';
import { probeLive } from '../unit/web/support/samples.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** What is still referred to, MiB. */
function heldMiB(): number {
  collect();
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 2 ** 20;
}

let it_: Running;
afterEach(() => it_.web.close());

/** Lets what was written go out, and what came in be heard. */
const turn = () => new Promise((next) => setImmediate(next));

describe('a client that never reads', () => {
  it('costs no memory while only readings flow, and is let go once its pings stay unanswered', async () => {
    const timers = new ManualTimers();
    it_ = await running({ timers });
    await rawStream(it_.web.port);
    const good = new TestClient(it_.web);
    await good.until((all) => all.length === 1);
    const probes = Array.from({ length: 250 }, (_, i) => probeLive(i, `dev/${i}`));
    const messageBytes = JSON.stringify(probes).length;
    const before = heldMiB();
    const flow = async (ms: number): Promise<void> => {
      for (const untilMs = timers.nowMs() + ms; timers.nowMs() < untilMs; timers.advance(17)) {
        it_.desk.change({ kind: 'readings', probes });
        await turn();
        good.messages.length = 0;
      }
    };
    await flow(streamLimits.deadAfterMs - 1000);
    expect(await streamClients(it_)).toBe(2);
    // Unread, all that was told by now is more than 20 MiB.
    expect((messageBytes * (streamLimits.deadAfterMs - 1000)) / 17 / 2 ** 20).toBeGreaterThan(20);
    expect(heldMiB() - before).toBeLessThan(8);
    await flow(3000);
    expect(await streamClients(it_)).toBe(1);
    await good.end();
  });

  it('is dropped once alarms and marks pile up, before they cost much', async () => {
    it_ = await running({ timers: new ManualTimers() });
    await rawStream(it_.web.port);
    const before = heldMiB();
    const text = 'x'.repeat(500);
    let told = 0;
    while ((await streamClients(it_)) > 0) {
      for (let i = 0; i < 200; i += 1)
        it_.desk.change({ kind: 'mark', iron: 'small', mark: { kind: 'note', text } });
      told += 200;
      // The system's own buffers take some MB before anything waits in the process; 60 MB are beyond them.
      expect(told).toBeLessThan(100_000);
    }
    expect(heldMiB() - before).toBeLessThan(8);
  });
});
