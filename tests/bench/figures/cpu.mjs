import { runPairs } from '../parts/run-trial.mjs';
import { median } from '../parts/stats.mjs';
import { sides } from './sides.mjs';

/** CPU of the program with four probes: at rates of real probes, and at what four full lines of 115200 baud carry. */
export async function cpu({ pairs, full }) {
  const seconds = full ? 60 : 20;
  const slow = await runPairs('load', { hz: 10, warmupS: 10, seconds, coalesceMs: 0 }, pairs);
  const fast = await runPairs('load', { hz: 250, warmupS: 10, seconds, coalesceMs: 16 }, pairs);
  return [
    {
      what: `CPU at 4 probes x 10 Hz, % of a core over ${seconds} s`,
      ...sides(slow, 'cpuPct', 2),
      target: 1.5,
      note: threads(slow),
    },
    {
      what: `CPU per line at 4 x 250 lines/s, us over ${seconds} s`,
      ...sides(fast, 'usPerLine', 0),
      target: 2,
      note: threads(fast),
    },
  ];
}

/** Where the CPU time goes: a thread beside the main one is the book's, the compiler's or the collector's. */
function threads(pairs) {
  const of = (subject) => {
    const main = median(pairs.map((pair) => pair[subject].mainUsPerLine));
    const all = median(pairs.map((pair) => pair[subject].usPerLine));
    return `${main.toFixed(0)} + ${(all - main).toFixed(0)}`;
  };
  const messages = (subject) => median(pairs.map((pair) => pair[subject].messages)).toFixed(0);
  return (
    `us a line on the main thread + on others: ours ${of('ours')}, barest ${of('barest')}; ` +
    `messages a second: ours ${messages('ours')}, barest ${messages('barest')}`
  );
}
