import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

/** The libraries whose machine code is in packages of their own, one a platform, and how those are named. */
const perPlatform: Readonly<Record<string, readonly string[]>> = {
  '@rolldown/binding': ['linux-x64-gnu', 'linux-arm64-gnu', 'darwin-x64', 'darwin-arm64', 'win32-x64-msvc'],
  '@biomejs/cli': ['linux-x64', 'linux-arm64', 'darwin-x64', 'darwin-arm64', 'win32-x64'],
  '@oxlint/binding': ['linux-x64-gnu', 'linux-arm64-gnu', 'darwin-x64', 'darwin-arm64', 'win32-x64-msvc'],
  '@typescript/typescript': ['linux-x64', 'linux-arm64', 'darwin-x64', 'darwin-arm64', 'win32-x64'],
};

const lockSchema = z.object({
  packages: z.record(z.string(), z.object({ optional: z.boolean().optional() })),
});

describe('the lock file', () => {
  const lock = lockSchema.parse(
    JSON.parse(readFileSync(new URL('../../../package-lock.json', import.meta.url), 'utf8')),
  );

  it.each(Object.entries(perPlatform))('holds every platform of %s', (name, platforms) => {
    for (const platform of platforms) {
      expect(lock.packages, `${name}-${platform}`).toHaveProperty([`node_modules/${name}-${platform}`]);
    }
  });

  it('names no host that packages were fetched from', () => {
    expect(readFileSync(new URL('../../../package-lock.json', import.meta.url), 'utf8')).not.toContain(
      '"resolved"',
    );
  });
});
