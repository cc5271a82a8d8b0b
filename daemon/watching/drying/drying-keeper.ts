import { type Drying, foldDrying, nothingDries } from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';
import type { Settings } from '../../settings/settings.ts';
import type { ClockChange } from '../clock-watch.ts';
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
/** A small board has its clock set so soon after it was started, ms. */
const BOOT_MS = 900_000;

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
  /** When this run began, by the clock as it stood then; null before the book was read. */
  #startUtcMs: number | null = null;
  /** By how much the clock stood behind then, ms: 0 or less. */
  #offByMs = 0;
  #wasSet = false;

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

  /** Takes in what the book has of before; it can be asked for again where a book is opened late, and counts once. */
  takeBook(entries: readonly ShopEntry[]): void {
    if (this.#early === null) return;
    const known = new Set(entries.map(({ commandId }) => commandId));
    const early = this.#early.filter(({ commandId }) => !known.has(commandId));
    this.#early = null;
    this.#real = nothingDries;
    this.#simulated = nothingDries;
    for (const entry of entries) this.#fold(entry);
    this.#startUtcMs = Math.min(this.#parts.nowUtcMs(), ...early.map(({ atUtcMs }) => atUtcMs));
    this.#offByMs = this.#mendClock(this.#real, false);
    this.#mendClock(this.#simulated, true);
    for (const entry of early) this.#fold(entry);
    this.clocks.touch();
    this.#haveRead();
  }

  /** The clock stands before what the book has: nobody knows how long the program was off. Gives by how much, ms. */
  #mendClock({ lastUtcMs }: Drying, simulated: boolean): number {
    const nowUtcMs = Math.round(this.#parts.nowUtcMs());
    if (lastUtcMs === null || nowUtcMs > lastUtcMs - BEHIND_MS) return 0;
    // Before this run, all of it: what happens in it has the time that it begins at, or a later one.
    const byMs = nowUtcMs - lastUtcMs - 1;
    const entry = this.#entry(
      { kind: 'clock', byMs, while: 'off', startUtcMs: null, earlierByMs: byMs },
      simulated,
    );
    this.#fold(entry);
    void this.#parts.keep(entry);
    return byMs;
  }

  /**
   * The machine's clock was set. Where that is soon after the machine was started, and forward, it was not right before:
   * what happened in earlier runs keeps the time that it had, and coats have dried through the night that nobody counted.
   */
  clockSet({ byMs, sinceBootMs }: Pick<ClockChange, 'byMs' | 'sinceBootMs'>): void {
    const isBoot = !this.#wasSet && byMs > 0 && byMs >= -this.#offByMs && sinceBootMs < BOOT_MS;
    this.#wasSet = true;
    const startUtcMs = isBoot && this.#startUtcMs !== null ? Math.round(this.#startUtcMs) : null;
    void this.happened({
      kind: 'clock',
      byMs,
      while: startUtcMs === null ? 'running' : 'boot',
      startUtcMs,
      earlierByMs: startUtcMs === null ? byMs : -this.#offByMs,
    });
  }

  #fold(entry: ShopEntry): void {
    const { happened, commandId } = entry;
    // A probe's air is no command, and there is very much of it.
    if (happened.kind !== 'air' || happened.how === 'typed') this.#commands.add(commandId);
    if (entry.simulated) this.#simulated = foldDrying(this.#simulated, entry);
    else this.#real = foldDrying(this.#real, entry);
  }
}
