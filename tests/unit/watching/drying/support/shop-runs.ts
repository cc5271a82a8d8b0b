import { firstSettings } from '../../../../../daemon/settings/settings.ts';
import { DryingKeeper } from '../../../../../daemon/watching/drying/drying-keeper.ts';
import { type Drying, foldDrying, nothingDries } from '../../../../../shared/shop/drying.ts';
import type { ShopEntry } from '../../../../../shared/shop/entry.ts';
import { waterBorne } from './in-shop.ts';

/** A run of the program, from its start on. */
export interface RunOptions {
  /** How far the machine's clock is ahead of true time as the program starts; less than 0: behind, ms. */
  readonly aheadMs?: number;
  readonly simulated?: boolean;
  readonly byWallClock?: boolean;
  /** Whether the book is read at once. */
  readonly reads?: boolean;
}

/** One shop from run to run, with a book, true time, and a machine's clock that may be wrong. */
export class ShopRuns {
  readonly journal: ShopEntry[] = [];
  trueMs = Date.UTC(2026, 2, 1, 10);
  aheadMs = 0;
  simulated = false;
  keeper: DryingKeeper;
  /** By the ids of the coats: when each was put on, in true time. */
  readonly #putMs = new Map<string, number>();
  #ids = 0;

  constructor() {
    this.keeper = this.#keeper(true);
    this.read();
  }

  get nowUtcMs(): number {
    return this.trueMs + this.aheadMs;
  }

  /** The program starts anew; what was put in the journal is in its book. */
  start({ aheadMs = 0, simulated = false, byWallClock = true, reads = true }: RunOptions = {}): void {
    this.aheadMs = aheadMs;
    this.simulated = simulated;
    this.keeper = this.#keeper(byWallClock);
    if (reads) this.read();
  }

  read(): void {
    this.keeper.takeBook([...this.journal]);
  }

  wait(ms: number): void {
    this.trueMs += ms;
  }

  /** The program runs on for so long, and looks at what dries each minute. */
  runOn(ms: number): void {
    for (let goneMs = 0; goneMs < ms; goneMs += 60_000) {
      this.wait(60_000);
      this.keeper.noteRunning();
    }
  }

  /** The machine's clock is set, and that is seen. */
  set(byMs: number, sinceBootMs: number): void {
    this.aheadMs += byMs;
    this.keeper.clockSet({ byMs, sinceBootMs });
  }

  /** A coat is put on, or was so long ago; gives its id. */
  put(agoMs = 0): string {
    const coat = this.#newId();
    void this.keeper.happened({
      kind: 'coats',
      cement: waterBorne,
      cementVersion: 1,
      piece: 'flap',
      pieceVersion: 1,
      places: [{ coat, side: 1, area: null }],
      fromUtcMs: this.nowUtcMs - agoMs,
    });
    this.#putMs.set(coat, this.trueMs - agoMs);
    return coat;
  }

  /** By how much each coat of the shop that is shown counts as older than it is, ms. */
  tooOldMs(): readonly number[] {
    return Object.values(this.keeper.drying.coats).map(({ id, fromUtcMs }) => {
      const putMs = this.#putMs.get(id) ?? Number.NaN;
      return this.nowUtcMs - fromUtcMs - (this.trueMs - putMs);
    });
  }

  /** What a program that reads the journal from its beginning makes of it. */
  folded(simulated = this.simulated): Drying {
    return this.journal.filter((entry) => entry.simulated === simulated).reduce(foldDrying, nothingDries);
  }

  #newId(): string {
    this.#ids += 1;
    return `id ${this.#ids}`;
  }

  #keeper(byWallClock: boolean): DryingKeeper {
    return new DryingKeeper({
      settings: () => firstSettings,
      simulated: () => this.simulated,
      byWallClock,
      nowUtcMs: () => this.nowUtcMs,
      newId: () => this.#newId(),
      zone: 'Etc/UTC',
      keep: async (entry) => {
        this.journal.push(entry);
        return true;
      },
    });
  }
}
