import { runTrial } from '../parts/run-trial.mjs';
import { median, spread } from '../parts/stats.mjs';

const RATES_HZ = [10, 50, 200];
/** Trials of one round, each the other way round than the round before. */
const ROUND = ['barest', 'ours', 'barest again'];

/** From a line written to its number painted in Chromium, with the barest against itself beside it. */
export async function paint({ pairs, full }) {
  const rows = [];
  for (const hz of RATES_HZ) {
    const seconds = Math.max(full ? 20 : 10, (full ? 500 : 200) / hz);
    const rounds = [];
    for (let i = 0; i < pairs; i += 1) rounds.push(await runRound({ hz, warmupS: 4, seconds }, i));
    rows.push(rowOf(rounds, hz, seconds));
  }
  return rows;
}

async function runRound(options, i) {
  const round = {};
  for (const name of i % 2 === 0 ? ROUND : ROUND.toReversed())
    round[name] = await runTrial('paint', { ...options, subject: name === 'ours' ? 'ours' : 'barest' });
  return round;
}

function rowOf(rounds, hz, seconds) {
  const values = (name, key) => rounds.map((round) => round[name][key]);
  const ratio = (name, key) => median(rounds.map((round) => round[name][key] / round.barest[key]));
  const both = (name) =>
    `${spread(values(name, 'p99Ms'), 1)}, p50 ${median(values(name, 'p50Ms')).toFixed(1)}`;
  const perSecond = (name) => median(values(name, 'perSecond')).toFixed(0);
  const unknown = rounds.reduce((sum, round) => sum + round.ours.unknown + round.barest.unknown, 0);
  return {
    what: `line written to number painted, p99 at ${hz} lines/s, ms over ${seconds.toFixed(0)} s`,
    ours: both('ours'),
    barest: both('barest'),
    ratio: ratio('ours', 'p99Ms'),
    target: 1.3,
    note:
      `the barest against itself: p99 ${ratio('barest again', 'p99Ms').toFixed(2)}, ` +
      `p50 ${ratio('barest again', 'p50Ms').toFixed(2)}; ours against it: p50 ${ratio('ours', 'p50Ms').toFixed(2)}; ` +
      `painted a second: ours ${perSecond('ours')}, barest ${perSecond('barest')}; ` +
      `${unknown} numbers painted that were not sent`,
  };
}
