import { existsSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** SQLite's log and its index belong to the file: without them the latest commits would be missing from it. */
const companions = ['', '-wal', '-shm'] as const;

/**
 * Gives a damaged book another name, in the same folder, with its log: `book-damaged-2026-03-01T10-11-12Z.sqlite`.
 * No connection may have it open. Returns the new path; throws the file system's error.
 */
export function setAside(file: string, nowUtcMs: number): string {
  const under = freeName(dirname(file), nowUtcMs);
  for (const end of companions) if (existsSync(file + end)) renameSync(file + end, under + end);
  return under;
}

function freeName(folder: string, nowUtcMs: number): string {
  const date = new Date(nowUtcMs).toISOString().slice(0, 19).replaceAll(':', '-');
  for (let i = 1; ; i++) {
    const name = join(folder, `book-damaged-${date}Z${i === 1 ? '' : `-${i}`}.sqlite`);
    if (companions.every((end) => !existsSync(name + end))) return name;
  }
}
