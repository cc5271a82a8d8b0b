// One trial in a process of its own: makes the devices, starts the program, measures, says what came out. Told what to do
// by the process that forked it; see `runTrial`.
import '../parts/children.mjs';
import { clients } from './clients.mjs';
import { cure } from './cure.mjs';
import { fold } from './fold.mjs';
import { frames } from './frames.mjs';
import { load } from './load.mjs';
import { paint } from './paint.mjs';
import { start } from './start.mjs';
import { work } from './work.mjs';

const trials = { load, paint, clients, start, fold, cure, frames, work };

process.once('disconnect', () => process.exit(1));
process.once('message', async ({ trial, options }) => {
  try {
    process.send({ result: await trials[trial](options) }, () => process.exit(0));
  } catch (error) {
    process.send({ error: `${trial} of ${options.subject}: ${error.stack}` }, () => process.exit(1));
  }
});
