import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { takeLock } from '../../daemon/book/lock.ts';
import { runChild } from '../unit/book/child.ts';
import { dataFolder } from '../unit/book/recording.ts';

describe('the lock on a data folder', () => {
  it('is one daemon’s at a time, and free after its release', () => {
    const folder = join(dataFolder(), 'made', 'by it');
    const first = takeLock(folder);
    expect(first.kind).toBe('taken');
    expect(takeLock(folder).kind).toBe('held');
    expect(takeLock(dataFolder()).kind).toBe('taken');
    if (first.kind === 'taken') first.release();
    const second = takeLock(folder);
    expect(second.kind).toBe('taken');
    if (second.kind === 'taken') second.release();
  });

  it('holds between processes, and goes with a process that is killed', async () => {
    const folder = dataFolder();
    const said: string[] = [];
    await runChild(['lock', folder], (line, child) => {
      said.push(line, takeLock(folder).kind);
      child.kill('SIGKILL');
    });
    expect(said).toEqual(['taken', 'held']);
    const lock = takeLock(folder);
    expect(lock.kind).toBe('taken');
    await runChild(['lock', folder], (line, child) => {
      said.push(line);
      child.kill('SIGKILL');
    });
    expect(said).toEqual(['taken', 'held', 'held']);
    if (lock.kind === 'taken') lock.release();
  });

  it('that can’t be taken at all says so', () => {
    const folder = dataFolder();
    writeFileSync(join(folder, 'lock.sqlite'), 'this is no SQLite file, and long enough to be seen as none');
    const lock = takeLock(folder);
    expect(lock).toMatchObject({ kind: 'unavailable' });
    const file = join(folder, 'a file');
    writeFileSync(file, '');
    const inFile = takeLock(file);
    expect(inFile.kind === 'unavailable' && inFile.message).toContain(file);
  });
});
