import { describe, expect, it } from 'vitest';
import { Bench } from '../end-to-end/page/bench.ts';
import { heldOver } from '../end-to-end/page/day.ts';

/** `SOLEPLATE_HOURS` takes another number of hours, for a slice; two at least. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 24);

/**
 * What the engine compiles of hot code grows for many hours (by 1.5 MiB in a day, so that the page as it is fails here) and
 * is none of the page's: without its compilers the heap is what the page itself holds.
 */
const engines = [
  ['as it is', []],
  ['without its compilers', ['--js-flags=--no-opt --no-maglev --no-sparkplug']],
] as const;

describe.each(engines)('with the engine %s', (_, browserArgs) => {
  const bench = Bench.ofFile(browserArgs);

  it(`a page that stays open for ${HOURS} h does not grow`, async () => {
    const held = await heldOver(
      bench,
      Array.from({ length: HOURS }, (_, i) => (i + 1) * 60),
    );
    for (const { atMin, heapMiB, nodes, listeners } of held)
      console.log(`${atMin / 60} h: heap ${heapMiB.toFixed(2)} MiB, ${nodes} nodes, ${listeners} listeners`);
    const [first, last] = [held[0], held.at(-1)];
    if (first === undefined || last === undefined) return expect.unreachable();
    expect(last.heapMiB - first.heapMiB).toBeLessThan(1);
    expect(last.nodes - first.nodes).toBeLessThan(50);
    expect(last.listeners).toBeLessThanOrEqual(first.listeners + 2);
  });
});
