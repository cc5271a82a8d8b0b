import { execFileSync } from 'node:child_process';
import { closeSync, constants, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { endOnEmptyRead } from '../../daemon/probe/port/end-of-read.ts';
import { keepFromHangingUp } from '../../daemon/probe/port/hang-up.ts';
import { openPort } from '../../daemon/probe/port/open.ts';
import { ptyBench } from './serial-pty.ts';

describe('a port by itself, without anybody looking at its node', () => {
  // Without its own read the library told of fewer than half of these.
  it('tells each time that its device hung up just after it spoke', async () => {
    const bench = ptyBench();
    const { board } = bench;
    for (let round = 0; round < 6; round += 1) {
      await board.plug();
      const told: string[] = [];
      const port = openPort(
        { path: board.path, baudRate: 115_200 },
        {
          opened: () => told.push('opened'),
          data: () => told.push('data'),
          mayReset: () => undefined,
          ended: () => told.push('ended'),
        },
      );
      await vi.waitUntil(() => told.includes('opened'), { timeout: 3000, interval: 1 });
      board.write('t=1\n');
      await vi.waitUntil(() => told.includes('data'), { timeout: 3000, interval: 1 });
      await board.pull();
      await vi.waitUntil(() => told.includes('ended'), { timeout: 3000, interval: 1 });
      await port.close();
      expect(told.filter((word) => word === 'ended')).toEqual(['ended']);
    }
    await bench.remove();
  });
});

describe('keeping a port from hanging up', () => {
  it('has nothing to say of a device that was pulled meanwhile', async () => {
    expect(await keepFromHangingUp('/nowhere/port', process.platform)).toBe('');
  });

  it('gives the reason where it can’t be done', async () => {
    expect(await keepFromHangingUp('/dev/null', process.platform)).toMatch(/^stty: /);
  });
});

describe('a read', () => {
  let folder: string;
  let fifo: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'read-'));
    fifo = join(folder, 'fifo');
    execFileSync('mkfifo', [fifo]);
  });

  afterEach(() => rmSync(folder, { recursive: true }));

  /** A binding on a pipe, whose poller says when the test says so. */
  function bindingOnPipe() {
    const waiting: ((error: Error | null) => void)[] = [];
    const binding = {
      fd: openSync(fifo, constants.O_RDONLY | constants.O_NONBLOCK) as number | null,
      poller: { once: (_event: 'readable', told: (error: Error | null) => void) => waiting.push(told) },
      read: (_buffer: Buffer, _offset: number, _length: number): Promise<{ bytesRead: number }> =>
        Promise.reject(new Error('the library’s own read')),
    };
    endOnEmptyRead(binding);
    return { binding, waiting, read: () => binding.read(Buffer.alloc(16), 0, 16) };
  }

  it('of nothing is the end', async () => {
    const { binding, read } = bindingOnPipe();
    await expect(read()).rejects.toThrow('hung up');
    closeSync(binding.fd ?? -1);
  });

  it('waits while there is nothing yet, and gives what comes', async () => {
    const { binding, waiting, read } = bindingOnPipe();
    const writer = openSync(fifo, constants.O_WRONLY);
    const reading = read();
    await vi.waitUntil(() => waiting.length === 1);
    writeSync(writer, 't=1\n');
    waiting[0]?.(null);
    expect((await reading).bytesRead).toBe(4);
    closeSync(writer);
    closeSync(binding.fd ?? -1);
  });

  it('passes on why waiting failed', async () => {
    const { binding, waiting, read } = bindingOnPipe();
    const writer = openSync(fifo, constants.O_WRONLY);
    const reading = read();
    await vi.waitUntil(() => waiting.length === 1);
    waiting[0]?.(new Error('bad file descriptor'));
    await expect(reading).rejects.toThrow('bad file descriptor');
    closeSync(writer);
    closeSync(binding.fd ?? -1);
  });

  it('is cancelled where the port was closed meanwhile, and waits on no closed port', async () => {
    const { binding, waiting, read } = bindingOnPipe();
    const writer = openSync(fifo, constants.O_WRONLY);
    const fd = binding.fd ?? -1;
    const reading = read();
    binding.fd = null;
    await expect(reading).rejects.toMatchObject({ canceled: true });
    await expect(read()).rejects.toMatchObject({ canceled: true });
    expect(waiting).toHaveLength(0);
    closeSync(writer);
    closeSync(fd);
  });
});
