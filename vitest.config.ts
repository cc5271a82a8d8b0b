import { defineConfig } from 'vitest/config';

/** One project a kind of test, so that a kind can be run alone: `npx vitest run --project unit`. */
const kind = (name: string, options: Record<string, unknown> = {}) => ({
  // What is waited for may take its time on a small machine; that it comes at all is what counts.
  test: { name, include: [`tests/${name}/**/*.test.ts`], expect: { poll: { timeout: 10_000 } }, ...options },
});

export default defineConfig({
  test: {
    projects: [
      kind('unit'),
      kind('reference'),
      kind('property', { testTimeout: 60_000 }),
      kind('fault', { testTimeout: 60_000, globalSetup: 'tests/build-first.ts' }),
      kind('end-to-end', {
        testTimeout: 120_000,
        hookTimeout: 60_000,
        fileParallelism: false,
        globalSetup: 'tests/build-first.ts',
      }),
    ],
  },
});
