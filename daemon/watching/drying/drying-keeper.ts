import { type Drying, foldDrying, nothingDries } from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';
import type { Settings } from '../../settings/settings.ts';
import { Clocks } from './clocks.ts';

export interface DryingParts {
  readonly settings: () => Settings;
  readonly simulated: () => boolean;
  /** UTC as the coats live by it: the wall clock, or where time is simulated its own. */
  readonly nowUtcMs: () => number;
  readonly newId: () => string;
  readonly zone: string;
  /** Keeps an entry in the book; tells whether it is there. */
  readonly keep: (entry: ShopEntry) => Promise<boolean>;
}

/** A clock that stood behind by less when the program started is let be, ms: times are rounded, and disks are slow. */
const BEHIND_MS = 2000;

/**
 * What dries, while the program runs: the state of the fold over the shop's journal, and what was worked out of it. Real
 * and simulated coats never meet: each are a fold of their own.
 */
export class DryingKeeper {
  /** Settles once what the book has of before was read. */
  readonly read: Promise<void>;
  readonly clocks: Clocks;
  readonly #parts: DryingParts;
  #haveRead: () => void = () => undefined;
  #real: Drying = nothingDries;
  #simulated: Drying = nothingDries;
  /** What happened before the book was read, to be put behind what it has. */
  #early: readonly ShopEntry[] | null = [];
  readonly #commands = new Set<string>();

  constructor(parts: DryingParts) {
    this.#parts = parts;
    const { settings, nowUtcMs } = parts;
    this.clocks = new Clocks({ drying: () => this.drying, settings, nowUtcMs });
    this.read = new Promise((resolve) => {
      this.#haveRead = resolve;
    });
  }

  get drying(): Drying {
    return this.#parts.simulated() ? this.#simulated : this.#real;
  }

  /** Whether a command has been carried out before. */
  has(commandId: string): boolean {
    return this.#commands.has(commandId);
  }

  /** Takes in what happened now, and gives whether it is in the book. */
  happened(happened: ShopHappened, commandId?: string): Promise<boolean> {
    const entry = this.#entry(happened, this.#parts.simulated(), commandId);
    if (this.#early !== null) this.#early = [...this.#early, entry];
    this.#fold(entry);
    this.clocks.follow(happened);
    return this.#parts.keep(entry);
  }

  #entry(happened: ShopHappened, simulated: boolean, commandId = this.#parts.newId()): ShopEntry {
    const { nowUtcMs, zone } = this.#parts;
    return { commandId, atUtcMs: Math.round(nowUtcMs()), zone, simulated, happened };
  }

  /** Takes in what the book has of before. */
  takeBook(entries: readonly ShopEntry[]): void {
    const known = new Set(entries.map(({ commandId }) => commandId));
    const early = (this.#early ?? []).filter(({ commandId }) => !known.has(commandId));
    this.#real = nothingDries;
    this.#simulated = nothingDries;
    for (const entry of entries) this.#fold(entry);
    this.#mendClock(this.#real, false);
    this.#mendClock(this.#simulated, true);
    for (const entry of early) this.#fold(entry);
    this.#early = null;
    this.clocks.touch();
    this.#haveRead();
  }

  /** The clock stands before what the book has: nobody knows how long the program was off. */
  #mendClock({ lastUtcMs }: Drying, simulated: boolean): void {
    const nowUtcMs = Math.round(this.#parts.nowUtcMs());
    if (lastUtcMs === null || nowUtcMs > lastUtcMs - BEHIND_MS) return;
    const entry = this.#entry({ kind: 'clock', byMs: nowUtcMs - lastUtcMs, while: 'off' }, simulated);
    this.#fold(entry);
    void this.#parts.keep(entry);
  }

  #fold(entry: ShopEntry): void {
    if (entry.happened.kind !== 'air') this.#commands.add(entry.commandId);
    if (entry.simulated) this.#simulated = foldDrying(this.#simulated, entry);
    else this.#real = foldDrying(this.#real, entry);
  }
}
