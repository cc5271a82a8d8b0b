import { afterAll, beforeAll, expect, it } from 'vitest';
import { Bench } from '../end-to-end/page/bench.ts';
import { heldOver } from '../end-to-end/page/day.ts';

/** `SOLEPLATE_HOURS` takes another number of hours, for a slice; two at least. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 24);

let bench: Bench;
beforeAll(async () => {
  bench = await Bench.make();
}, 120_000);
afterAll(() => bench.close());

it(`a page that stays open for ${HOURS} h does not grow in the second half of them`, async () => {
  const held = await heldOver(
    bench,
    Array.from({ length: HOURS }, (_, i) => (i + 1) * 60),
  );
  for (const { atMin, heapMiB, nodes, listeners } of held)
    console.log(`${atMin / 60} h: heap ${heapMiB.toFixed(2)} MiB, ${nodes} nodes, ${listeners} listeners`);
  // In the first half the engine compiles more and more of the page, and the browser fills its own lists of requests and messages,
  // which are bounded: a snapshot of the heap shows nothing else that grows.
  const [settled, last] = [held[Math.floor(held.length / 2)], held.at(-1)];
  if (settled === undefined || last === undefined) return expect.unreachable();
  expect(last.heapMiB - settled.heapMiB).toBeLessThan(0.5);
  expect(last.nodes - settled.nodes).toBeLessThan(50);
  expect(last.listeners).toBeLessThanOrEqual(settled.listeners + 2);
});
