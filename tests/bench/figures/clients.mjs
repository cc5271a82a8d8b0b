import { runPairs } from '../parts/run-trial.mjs';
import { median } from '../parts/stats.mjs';
import { sides } from './sides.mjs';

/** 100 clients of the stream at 50 messages a second: from a line written to its message received. */
export async function clients({ pairs, full }) {
  const seconds = full ? 60 : 20;
  const done = await runPairs('clients', { hz: 50, clients: 100, warmupS: 5, seconds }, pairs);
  const of = (subject, key, digits) => median(done.map((pair) => pair[subject][key])).toFixed(digits);
  const unknown = done.reduce((sum, { ours, barest }) => sum + ours.unknown + barest.unknown, 0);
  return [
    {
      what: `line written to received by 100 clients at 50 messages/s, p99, ms over ${seconds} s`,
      ...sides(done, 'p99Ms', 1),
      target: 1.5,
      note:
        `p50: ours ${of('ours', 'p50Ms', 1)}, barest ${of('barest', 'p50Ms', 1)}; messages a second and client: ` +
        `ours ${of('ours', 'perSecond', 1)}, barest ${of('barest', 'perSecond', 1)}; ` +
        `${unknown} received that were not sent`,
    },
  ];
}
