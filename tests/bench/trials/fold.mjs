import { probeLive } from '../../../build/daemon/watching/view.js';
import { hotJunctionC } from '../../../build/shared/thermocouple/thermocouple.js';
import { plateEstimate, trackPlate, unmeasuredProbe } from '../../../build/shared/thermometer/lag/filter.js';
import { advance, take } from '../../../build/shared/watch/replay.js';
import { resume } from '../../../build/shared/watch/watch.js';
import { freshlyCarried, PROBES, sampleAt } from '../parts/fold-watch.mjs';
import { median } from '../parts/stats.mjs';
import { areaAt, begunAt } from '../parts/work-watch.mjs';

const ROUNDS = 41;
/** Rounds in which the compiler finds what is hot; they do not count. */
const COLD_ROUNDS = 10;
const A_ROUND = 4000;

/** CPU time that each of these takes, ns, in turns: a message parsed, an emf converted, a reading filtered, and folded. */
export function fold() {
  const samples = Array.from({ length: A_ROUND }, (_, i) => sampleAt(PROBES[i % 4], Math.floor(i / 4)));
  const begun = resume(freshlyCarried(PROBES), 0, 0);
  const after = folded(begun, samples);
  if (PROBES.some((probe) => after.readings[probe]?.quality !== 'ok'))
    throw new Error('the fold gave no readings');
  const [nowhere, atWork] = [begunAt(null), begunAt(areaAt(30))];
  if (folded(atWork, samples).ironing.visit?.contactMs === 0) throw new Error('no visit went on');
  const text = messageOf(after);
  const parts = {
    parse: () => repeat(() => JSON.parse(text).probes.length),
    convert: () => repeat((i) => hotJunctionC('K', (i * 5) % 12_000, 18 + (i % 100) / 10)),
    filter: () => filtered(samples),
    fold: () => folded(begun, samples).seq,
    nowhere: () => folded(nowhere, samples).seq,
    atWork: () => folded(atWork, samples).seq,
  };
  const times = Object.fromEntries(Object.keys(parts).map((name) => [name, []]));
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [name, part] of Object.entries(parts)) {
      const from = process.cpuUsage();
      sink += part();
      const { user, system } = process.cpuUsage(from);
      const ns = ((user + system) * 1000) / A_ROUND;
      if (round >= COLD_ROUNDS) times[name].push(ns);
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, all]) => [`${name}Ns`, median(all)]));
}

/** Keeps the compiler from leaving out what nobody reads. */
let sink = 0;

function repeat(run) {
  let sum = 0;
  for (let i = 0; i < A_ROUND; i += 1) sum += run(i);
  return sum;
}

/** One probe's readings through the filter of plate and slope, an estimate from each. */
function filtered(samples) {
  let filter = null;
  let sum = 0;
  for (let i = 0; i < samples.length; i += 1) {
    filter = trackPlate(filter, i * 100, samples[i].sample.tC, unmeasuredProbe);
    sum += plateEstimate(filter, unmeasuredProbe).slopeKPerS;
  }
  return sum;
}

function folded(begun, samples) {
  let state = begun;
  for (const { sample, tMs } of samples) state = take(state, { kind: 'sample', sample }, tMs).state;
  return advance(state, state.tMs).state;
}

/** One message of the stream with one reading, as the program tells it. */
const messageOf = (state) =>
  JSON.stringify({
    epoch: '019d0000-0000-7000-8000-000000000000',
    seq: 12_345,
    kind: 'readings',
    probes: [probeLive(state, PROBES[0], state.tMs)],
  });
