import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** One project a kind of test, so that a kind can be run alone: `npx vitest run --project unit`. */
const kind = (name: string, options: Record<string, unknown> = {}) => ({
  // What is waited for may take its time on a small machine; that it comes at all is what counts.
  test: { name, include: [`tests/${name}/**/*.test.ts`], expect: { poll: { timeout: 10_000 } }, ...options },
});

export default defineConfig({
  test: {
    // Two at least, where vitest would leave a core of two to itself: tests of real processes wait more than they work.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      kind('unit', { testTimeout: 20_000 }),
      kind('reference', { testTimeout: 20_000 }),
      kind('property', { testTimeout: 60_000 }),
      // Tests of real processes get a second try, which the report shows: a machine that stalled is no fault of theirs.
      kind('fault', { testTimeout: 60_000, retry: 1, globalSetup: 'tests/build-first.ts' }),
      kind('end-to-end', {
        testTimeout: 120_000,
        retry: 1,
        hookTimeout: 60_000,
        globalSetup: 'tests/build-first.ts',
      }),
    ],
  },
});
