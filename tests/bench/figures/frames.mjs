import { runTrial } from '../parts/run-trial.mjs';

const THROTTLE = 4;

/** What a frame costs the page while four probes stream at 10 Hz, on a processor four times slower than this one. */
export async function frames({ full }) {
  const options = { hz: 10, warmupS: 6, seconds: full ? 60 : 15, throttle: THROTTLE };
  const ours = await runTrial('frames', { ...options, subject: 'ours' });
  const barest = await runTrial('frames', { ...options, subject: 'barest' });
  const both = ({ p95Ms, p50Ms }) => `${p95Ms.toFixed(1)}, p50 ${p50Ms.toFixed(1)}`;
  const more = ({ worstMs, busyFrames }) =>
    `worst ${worstMs.toFixed(0)} ms, ${busyFrames.toFixed(0)} frames a second with work`;
  return [
    {
      what: `work of a frame at 4 probes x 10 Hz, ${THROTTLE} times throttled, p95, ms`,
      ours: both(ours),
      barest: both(barest),
      ratio: ours.p95Ms / barest.p95Ms,
      target: 16,
      measure: ours.p95Ms,
      note: `the target is in ms; ours ${more(ours)}; barest ${more(barest)}`,
    },
  ];
}
