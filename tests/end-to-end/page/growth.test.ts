import { expect, it } from 'vitest';
import { Bench } from './bench.ts';
import { heldOver } from './day.ts';

/** The whole day is in tests/soak; this is its first part, past the minutes that a page keeps. */

const bench = Bench.ofFile();

it('a page that stays open does not grow', async () => {
  const [before, after] = await heldOver(bench, [18, 36]);
  if (before === undefined || after === undefined) return expect.unreachable();
  expect(after.heapMiB - before.heapMiB).toBeLessThan(0.5);
  expect(after.nodes - before.nodes).toBeLessThan(50);
  expect(after.listeners).toBeLessThanOrEqual(before.listeners + 2);
});
