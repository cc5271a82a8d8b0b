import type { Drying } from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';
import type { Settings } from '../../settings/settings.ts';
import type { ClockChange } from '../clock-watch.ts';
import { Clocks } from './clocks.ts';
import { World } from './world.ts';

export interface DryingParts {
  readonly settings: () => Settings;
  readonly simulated: () => boolean;
  /** UTC as the coats live by it: the wall clock, or where time is simulated its own. */
  readonly nowUtcMs: () => number;
  /** Whether that is the wall clock. */
  readonly byWallClock: boolean;
  readonly newId: () => string;
  readonly zone: string;
  /** Keeps an entry in the book; tells whether it is there. */
  readonly keep: (entry: ShopEntry) => Promise<boolean>;
}

/**
 * What dries, while the program runs: the state of the fold over the shop's journal, and what was worked out of it. Real
 * and simulated coats never meet: each are a fold of their own. A journal that is read from its beginning comes to the same.
 */
export class DryingKeeper {
  /** Settles once what the book has of before was read. */
  readonly read: Promise<void>;
  readonly clocks: Clocks;
  readonly #parts: DryingParts;
  #haveRead: () => void = () => undefined;
  readonly #worlds = [new World(false), new World(true)] as const;
  /** What happened before the book was read, to be put behind what it has. */
  #early: readonly ShopEntry[] | null = [];
  readonly #commands = new Set<string>();
  /** When this run began, by the clock as it stands now. */
  #startUtcMs: number;
  #wasSet = false;

  constructor(parts: DryingParts) {
    this.#parts = parts;
    const { settings, nowUtcMs } = parts;
    this.#startUtcMs = Math.round(nowUtcMs());
    this.clocks = new Clocks({ drying: () => this.drying, settings, nowUtcMs });
    this.read = new Promise((resolve) => {
      this.#haveRead = resolve;
    });
  }

  get drying(): Drying {
    return this.#world(this.#parts.simulated()).drying;
  }

  /** Whether a command has been carried out before. */
  has(commandId: string): boolean {
    return this.#commands.has(commandId);
  }

  /** Takes in what happened now, and gives whether it is in the book. */
  happened(happened: ShopHappened, commandId?: string): Promise<boolean> {
    return this.#add(happened, this.#parts.simulated(), commandId);
  }

  /** Takes in what the book has of before; it can be asked for again where a book is opened late, and counts once. */
  takeBook(entries: readonly ShopEntry[]): void {
    if (this.#early === null) return;
    // What happened in this run may have come into the book before that was read.
    const ownUtcMs = new Map(this.#early.map(({ commandId, atUtcMs }) => [commandId, atUtcMs]));
    const earlier = entries.filter(({ commandId, atUtcMs }) => ownUtcMs.get(commandId) !== atUtcMs);
    const known = new Set(earlier.map(({ commandId }) => commandId));
    const own = this.#early.filter(({ commandId }) => !known.has(commandId));
    this.#early = null;
    for (const world of this.#worlds) world.begin(earlier);
    for (const entry of earlier) this.#remember(entry);
    for (const entry of own) this.#fold(entry);
    if (own.length === 0) this.#startUtcMs = this.#nowUtcMs();
    for (const world of this.#worlds) {
      const behind = world.behind(own.length === 0 ? null : this.#startUtcMs, this.#nowUtcMs());
      if (behind !== null) void this.#add(behind, world.simulated);
    }
    this.clocks.touch();
    this.#haveRead();
  }

  /**
   * The machine's clock was set, and that of both worlds with it, whichever is shown. What the book has isn't known before it
   * was read: then each is told.
   */
  clockSet({ byMs, sinceBootMs }: Pick<ClockChange, 'byMs' | 'sinceBootMs'>): void {
    const step = { byMs, sinceBootMs, isFirst: !this.#wasSet, nowUtcMs: this.#nowUtcMs() };
    this.#wasSet = true;
    this.#startUtcMs += byMs;
    for (const world of this.#worlds)
      if (this.#early !== null || world.drying.lastUtcMs !== null)
        void this.#add(world.set(step), world.simulated);
  }

  /**
   * To be called as time goes on: of a shop where coats dry and nothing happens the journal is told that the program runs, or
   * a clock that stands before its end at the next start would not be seen to be wrong.
   */
  noteRunning(): void {
    if (this.#early !== null) return;
    const { byWallClock } = this.#parts;
    // Simulated time is none that real coats go by.
    for (const world of this.#worlds)
      if ((byWallClock || world.simulated) && world.isQuiet(this.#nowUtcMs()))
        void this.#add({ kind: 'runs' }, world.simulated);
  }

  #nowUtcMs(): number {
    return Math.round(this.#parts.nowUtcMs());
  }

  #add(happened: ShopHappened, simulated: boolean, commandId = this.#parts.newId()): Promise<boolean> {
    const { zone } = this.#parts;
    const entry = { commandId, atUtcMs: this.#nowUtcMs(), zone, simulated, happened };
    if (this.#early !== null) this.#early = [...this.#early, entry];
    this.#fold(entry);
    this.clocks.follow(happened);
    return this.#parts.keep(entry);
  }

  #fold(entry: ShopEntry): void {
    this.#remember(entry);
    this.#world(entry.simulated).fold(entry);
  }

  #remember({ happened, commandId }: ShopEntry): void {
    // A probe's air is no command, and there is very much of it.
    if (happened.kind !== 'air' || happened.how === 'typed') this.#commands.add(commandId);
  }

  #world(simulated: boolean): World {
    return this.#worlds[simulated ? 1 : 0];
  }
}
