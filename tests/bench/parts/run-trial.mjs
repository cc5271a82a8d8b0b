import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { end, own } from './children.mjs';

const TRIAL = fileURLToPath(new URL('../trials/trial.mjs', import.meta.url));

/** Runs one trial in a process of its own; rejects with what went wrong in it. */
export async function runTrial(trial, options) {
  const child = own(fork(TRIAL, { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] }));
  const answer = new Promise((resolve, reject) => {
    child.once('message', ({ result, error }) => {
      if (error === undefined) resolve(result);
      else reject(new Error(error));
    });
    child.once('exit', (code) => reject(new Error(`the trial ${trial} ended with ${code}`)));
  });
  child.send({ trial, options });
  try {
    return await answer;
  } finally {
    await end(child);
  }
}

/**
 * Runs pairs of trials that differ in `subject` alone, turn and turn about, so that a slow spell of the machine falls on
 * both; each pair the other way round than the one before.
 * @returns {Promise<{ ours: any, barest: any }[]>}
 */
export async function runPairs(trial, options, pairs) {
  const done = [];
  for (let i = 0; i < pairs; i += 1) {
    const pair = {};
    for (const subject of i % 2 === 0 ? ['ours', 'barest'] : ['barest', 'ours'])
      pair[subject] = await runTrial(trial, { ...options, subject });
    done.push(pair);
  }
  return done;
}
