import { runTrial } from '../parts/run-trial.mjs';

/** What a reading costs in computing, beside parsing one message of the stream. */
export async function fold() {
  const { parseNs, convertNs, filterNs, foldNs } = await runTrial('fold', {});
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
  ];
}
