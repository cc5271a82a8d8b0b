import { runPairs } from '../parts/run-trial.mjs';
import { sides } from './sides.mjs';

const PAIRS = 9;

/** From starting the process to its address being printed; before history, planner or replay have anything to load. */
export async function start() {
  // The first of each reads the files from the disk; what is measured is the program.
  await runPairs('start', {}, 1);
  const done = await runPairs('start', {}, PAIRS);
  return [
    {
      what: `start to listening, ms, median of ${PAIRS}`,
      ...sides(done, 'startMs', 0),
      target: 2.2,
      note: 'both import express, ws, serialport and better-sqlite3; the barest opens its book after it listens',
    },
  ];
}
