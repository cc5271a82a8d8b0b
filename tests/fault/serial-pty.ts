import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';

/** A board on a real pseudo-terminal that can be plugged in and pulled: socat holds its far end. */
class PtyBoard {
  readonly path: string;
  /** What the board has been sent. */
  heard = '';
  #socat: ChildProcess | null = null;

  constructor(path: string) {
    this.path = path;
  }

  /** Settles when the node is there; gives the time at which it was seen. */
  async plug(): Promise<number> {
    const socat = spawn('socat', [`pty,raw,echo=0,link=${this.path}`, '-'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    this.#socat = socat;
    socat.stdout.on('data', (bytes: Buffer) => {
      this.heard += bytes.toString('latin1');
    });
    // A line written as the board is pulled has nowhere to go.
    socat.stdin.on('error', () => undefined);
    await vi.waitUntil(() => existsSync(this.path), { timeout: 5000, interval: 2 });
    return performance.now();
  }

  write(text: string): void {
    this.#socat?.stdin?.write(Buffer.from(text, 'latin1'));
  }

  /** Settles when the node is gone. */
  async pull(): Promise<void> {
    const socat = this.#socat;
    this.#socat = null;
    if (socat === null) return;
    const gone = once(socat, 'close');
    socat.kill('SIGTERM');
    await gone;
  }
}

export interface Bench {
  readonly folder: string;
  readonly board: PtyBoard;
  remove(): Promise<void>;
}

/** A folder of its own with one board in it, not yet plugged in. */
export function ptyBench(): Bench {
  const folder = mkdtempSync(join(tmpdir(), 'serial-'));
  const board = new PtyBoard(join(folder, 'port'));
  return {
    folder,
    board,
    remove: async () => {
      await board.pull();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
