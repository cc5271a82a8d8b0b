import { type FSWatcher, watch } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** Names that a device may come back under. */
const deviceName = /^(tty|cu\.|serial)/;

/**
 * Watches the folders in which a device's node may appear. Not every folder can be watched on every system: who uses
 * this also looks by itself now and then.
 */
export class FolderWatch {
  readonly #folders: readonly string[];
  readonly #name: string;
  #watchers: FSWatcher[] = [];

  constructor(path: string, dev: string) {
    this.#name = basename(path);
    this.#folders = [...new Set([dev, join(dev, 'serial/by-id'), dirname(path)])];
  }

  /** Begins to watch; `onChange` is called for each node that may be the device's. */
  open(onChange: () => void): void {
    if (this.#watchers.length > 0) return;
    // A change of the node itself counts too: its access rights are set after it appears.
    const listener = (_event: string, name: string | null): void => {
      if (name === null || name === this.#name || deviceName.test(name)) onChange();
    };
    for (const folder of this.#folders) this.#watchOne(folder, listener);
  }

  close(): void {
    for (const watcher of this.#watchers) watcher.close();
    this.#watchers = [];
  }

  #watchOne(folder: string, listener: (event: string, name: string | null) => void): void {
    try {
      const watcher = watch(folder, listener);
      this.#watchers.push(watcher);
      // The folder went away (by-id does with its last device): its parent, or the next look, tells of the rest.
      watcher.on('error', () => watcher.close());
    } catch {
      // A folder that isn't there, or a system without watches to spare: looking now and then does it alone.
    }
  }
}
