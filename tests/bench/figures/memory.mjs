import { runTrial } from '../parts/run-trial.mjs';

/** Resident memory with four probes at 10 Hz, kept and streamed to one client; both programs run side by side. */
export async function memory({ full }) {
  const seconds = full ? 600 : 120;
  const options = { hz: 10, warmupS: 0, seconds, coalesceMs: 0 };
  const [ours, barest] = await Promise.all(
    ['ours', 'barest'].map((subject) => runTrial('load', { ...options, subject })),
  );
  return [
    {
      what: `resident memory after ${seconds} s at 4 x 10 Hz, MiB`,
      ours: ours.endMiB.toFixed(1),
      barest: barest.endMiB.toFixed(1),
      ratio: ours.endMiB / barest.endMiB,
      target: 2,
      note: `growth from the middle to the end: ours ${grown(ours)}, barest ${grown(barest)}`,
    },
  ];
}

const grown = ({ middleMiB, endMiB }) => `${(endMiB - middleMiB).toFixed(1)} MiB`;
