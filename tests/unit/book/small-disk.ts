import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A disk of its own, in memory; Linux as root only. */
export interface SmallDisk {
  readonly folder: string;
  remount(option: 'ro' | 'rw'): void;
}

const mount = (...values: string[]): boolean => spawnSync('mount', values).status === 0;

function tryToMount(bytes: number, folder: string): boolean {
  return process.platform === 'linux' && mount('-t', 'tmpfs', '-o', `size=${bytes}`, 'tmpfs', folder);
}

/** Whether this machine lets the tests mount a disk: in a container, or as another user, it does not. */
export const canMount: boolean = (() => {
  const folder = mkdtempSync(join(tmpdir(), 'soleplate-disk-'));
  const mounted = tryToMount(65_536, folder);
  if (mounted) spawnSync('umount', [folder]);
  rmSync(folder, { recursive: true });
  return mounted;
})();

/** Mounts a disk of this size for the rest of the test. */
export function smallDisk(bytes: number): SmallDisk {
  const folder = mkdtempSync(join(tmpdir(), 'soleplate-disk-'));
  if (!tryToMount(bytes, folder)) throw new Error(`${folder} could not be mounted`);
  onTestFinished(() => {
    spawnSync('umount', ['--lazy', folder]);
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    folder,
    remount: (option) => {
      if (!mount('-o', `remount,${option}`, folder))
        throw new Error(`${folder} could not be remounted ${option}`);
    },
  };
}
