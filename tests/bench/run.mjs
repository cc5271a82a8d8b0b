import { existsSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { readOptions } from './options.mjs';
import { rowText, table } from './parts/table.mjs';

/** Measures what the command line asks for, and says each figure as it comes, then all as a table. */
export async function bench(args) {
  const options = readOptions(args);
  if (options === null) return;
  if (process.platform !== 'linux' || !existsSync('/usr/bin/socat'))
    throw new Error(
      'The bench needs Linux with socat and Chromium (on Debian: apt-get install socat chromium).',
    );
  console.log(machine());
  const rows = [];
  const failed = [];
  for (const [name, measure] of options.figures) {
    console.log(`\n${name} ... (load of the machine ${load()})`);
    try {
      for (const row of await measure(options)) {
        rows.push(row);
        console.log(rowText(row));
      }
    } catch (error) {
      failed.push(name);
      console.error(`${name} could not be measured: ${error.stack}`);
    }
  }
  console.log(`\n${table(rows)}`);
  console.log(
    `Median (lowest..highest) over ${options.pairs} pairs unless said otherwise; load at the end ${load()}.`,
  );
  if (failed.length > 0) throw new Error(`Not measured: ${failed.join(', ')}.`);
}

const load = () =>
  loadavg()
    .map((l) => l.toFixed(1))
    .join(' ');

const machine = () =>
  `Node ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}`;
