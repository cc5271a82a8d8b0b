import { runTrial } from '../parts/run-trial.mjs';

/** What a reading costs in computing, beside parsing one message of the stream. */
export async function fold() {
  const { parseNs, convertNs, foldNs } = await runTrial('fold', {});
  const row = (what, ns, note) => ({
    what,
    ours: `${ns.toFixed(0)} ns`,
    barest: `${parseNs.toFixed(0)} ns`,
    ratio: ns / parseNs,
    target: null,
    note,
  });
  return [
    row(
      'emf with cold junction to a temperature, beside one JSON.parse of a stream message',
      convertNs,
      'type K',
    ),
    row(
      'a reading folded, beside the same',
      foldNs,
      'four probes on one iron at 10 Hz, with the ticks between',
    ),
  ];
}
