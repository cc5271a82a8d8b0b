import { mkdtempSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** As statfs(2) has it. */
const TMPFS = 0x01021994;

/** A new folder on a disk, since a commit to memory costs nothing; it goes away when this process ends. */
export function freshFolder() {
  const onDisk = [tmpdir(), '/var/tmp', process.cwd()].find((path) => statfsSync(path).type !== TMPFS);
  const folder = mkdtempSync(join(onDisk ?? tmpdir(), 'soleplate-bench-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
