import { parseArgs } from 'node:util';
import { bytes } from './figures/bytes.mjs';
import { clients } from './figures/clients.mjs';
import { cpu } from './figures/cpu.mjs';
import { cure } from './figures/cure.mjs';
import { fold } from './figures/fold.mjs';
import { frames } from './figures/frames.mjs';
import { memory } from './figures/memory.mjs';
import { paint } from './figures/paint.mjs';
import { size } from './figures/size.mjs';
import { start } from './figures/start.mjs';

const figures = { start, cpu, clients, paint, frames, memory, bytes, fold, cure, size };

const HELP = `npm run bench [-- FIGURE ... --full --pairs N]

Measures the program beside the barest one that does the same with the same libraries, in the same run.

FIGURE is any of ${Object.keys(figures).join(', ')}; all of them where none is named.
  --full      long trials: nine pairs, a minute of CPU, ten minutes of memory, eight hours of samples
  --pairs N   pairs of trials for cpu, clients and paint (3; with --full 9)
It takes about twenty minutes; with --full two hours. Leave the machine alone meanwhile.`;

/**
 * What the command line asks for; null where it only wanted to be told.
 * @throws Error with what is wrong and what would be right
 */
export function readOptions(args) {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { full: { type: 'boolean' }, pairs: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
  });
  if (values.help === true) {
    console.log(HELP);
    return null;
  }
  const full = values.full === true;
  const pairs = Number(values.pairs ?? (full ? 9 : 3));
  if (!Number.isInteger(pairs) || pairs < 1)
    throw new Error(`--pairs ${values.pairs}: a whole number from 1 on is needed.`);
  const unknown = positionals.filter((name) => !(name in figures));
  if (unknown.length > 0)
    throw new Error(
      `No figure is called ${unknown.join(', ')}: there are ${Object.keys(figures).join(', ')}.`,
    );
  const chosen = Object.entries(figures).filter(
    ([name]) => positionals.length === 0 || positionals.includes(name),
  );
  return { full, pairs, figures: chosen };
}
