import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of the running test's own; it goes away after it. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'soleplate-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
