import { runTrial } from '../parts/run-trial.mjs';

const DAY_HOURS = 8;

/** What is held in memory after an hour of work, and after a whole day's. */
async function heldRow() {
  const { held } = await runTrial('work', { hours: DAY_HOURS });
  const [first, last] = [held[0], held.at(-1)];
  const kB = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;
  const text = ({ stateBytes, visits, shopBytes, heapBytes }) =>
    `state ${kB(stateBytes)}, ${visits} visits in ${kB(shopBytes)}, heap ${(heapBytes / 2 ** 20).toFixed(1)} MiB`;
  return {
    what: `state of a watch after ${DAY_HOURS} h of work, beside after one hour, as JSON`,
    ours: kB(last.stateBytes),
    barest: kB(first.stateBytes),
    ratio: last.stateBytes / first.stateBytes,
    target: null,
    note: `one probe at 10 Hz, a mark every 15 s; after ${DAY_HOURS} h: ${text(last)}; after one: ${text(first)}`,
  };
}

/** What a reading costs in computing, beside parsing one message of the stream. */
export async function fold() {
  const { parseNs, convertNs, filterNs, foldNs, nowhereNs, atWorkNs } = await runTrial('fold', {});
  const row = (what, ns, note, target = null) => ({
    what,
    ours: `${ns.toFixed(0)} ns`,
    barest: `${parseNs.toFixed(0)} ns`,
    ratio: ns / parseNs,
    target,
    note,
  });
  return [
    row(
      'emf with cold junction to a temperature, beside one JSON.parse of a stream message',
      convertNs,
      `type K; ${(1e9 / convertNs / 1e6).toFixed(1)} million conversions a second`,
      0.5,
    ),
    row(
      'a reading through the filter of plate and slope, beside the same',
      filterNs,
      'with its estimate',
      0.5,
    ),
    row(
      'a reading folded, beside the same',
      foldNs,
      'four probes on one iron at 10 Hz, with the ticks between',
    ),
    {
      what: 'a reading folded with a visit open on a piece of 200 areas, beside one with no place said',
      ours: `${atWorkNs.toFixed(0)} ns`,
      barest: `${nowhereNs.toFixed(0)} ns`,
      ratio: atWorkNs / nowhereNs,
      target: null,
      note: 'the same readings; the same stage is worked in both',
    },
    await heldRow(),
  ];
}
