import { defineConfig } from 'vitest/config';

/** `npm run soak`: what takes too long for every change, whole days and hundreds of simulated hours. */
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/soak/**/*.test.ts'],
    globalSetup: 'tests/build-first.ts',
    testTimeout: 2 * 3600_000,
    hookTimeout: 120_000,
    fileParallelism: false,
  },
});
