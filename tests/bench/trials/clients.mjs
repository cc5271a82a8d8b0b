import { fork } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as delay } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { own } from '../parts/children.mjs';
import { freshFolder } from '../parts/folder.mjs';
import { match } from '../parts/match.mjs';
import { monotonicMs, pace } from '../parts/pace.mjs';
import { startProgram } from '../parts/program.mjs';
import { openPty } from '../parts/pty.mjs';
import { quantile } from '../parts/stats.mjs';
import { distinctTemperatures, wireLine } from '../parts/wire.mjs';

const CROWD = fileURLToPath(new URL('./crowd.mjs', import.meta.url));

/** One device that sends `hz` lines a second to `clients` clients in one other process: from line sent to message there. */
export async function clients({ subject, hz, clients, warmupS, seconds }) {
  const folder = freshFolder();
  const pty = await openPty(folder, 'device');
  const program = await startProgram(subject, { folder, serial: [pty.path] });
  const values = distinctTemperatures(hz);
  const sent = [];
  // A tenth of a gap: more would bring lines closer together than 50 messages a second are.
  const feed = pace({
    hz,
    jitter: 0.1,
    send: (i) => {
      const value = values[i % values.length];
      sent.push({ value, atMs: monotonicMs() });
      pty.write(wireLine(i, Math.round((i * 1000) / hz), value));
    },
  });
  const crowd = own(fork(CROWD, { serialization: 'advanced' }));
  crowd.send({ address: program.address, clients });
  await once(crowd, 'message');
  await delay(warmupS * 1000);
  crowd.send('begin');
  await delay(seconds * 1000);
  crowd.send('end');
  const [heard] = await once(crowd, 'message');
  feed.stop();
  await program.stop();
  const { latenciesMs, unknown } = match(sent, heard);
  return {
    p50Ms: quantile(latenciesMs, 0.5),
    p99Ms: quantile(latenciesMs, 0.99),
    perSecond: latenciesMs.length / clients / seconds,
    unknown,
  };
}
