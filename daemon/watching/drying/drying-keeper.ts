import type { Cement } from '../../../shared/cure/cement.ts';
import { type CoatClock, coatClock } from '../../../shared/cure/clock.ts';
import { airCourse } from '../../../shared/cure/course.ts';
import { type Cured, type Curing, cured, curingOf } from '../../../shared/cure/curing.ts';
import { type LearnedHere, learn } from '../../../shared/cure/learn.ts';
import { type Coat, type Drying, foldDrying, nothingDries } from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';
import { taughtOf } from '../../../shared/shop/observations.ts';
import { currentCements, type Settings } from '../../settings/settings.ts';

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

/** A coat with the cement that it is of. */
export interface KnownCoat {
  readonly coat: Coat;
  readonly cement: Cement;
  readonly clock: CoatClock;
}

/** A clock that stood behind by less when the program started is let be, ms: times are rounded, and disks are slow. */
const BEHIND_MS = 2000;
/** The course of the air is worked out anew this often, since what is told of it grows old, ms. */
const COURSE_MS = 60_000;

/**
 * What dries, while the program runs: the state of the fold over the shop's journal, and what was worked out of it. Real
 * and simulated coats never meet: each are a fold of their own.
 */
export class DryingKeeper {
  /** Settles once what the book has of before was read. */
  readonly read: Promise<void>;
  readonly #parts: DryingParts;
  #haveRead: () => void = () => undefined;
  #real: Drying = nothingDries;
  #simulated: Drying = nothingDries;
  /** What happened before the book was read, to be put behind what it has. */
  #early: readonly ShopEntry[] | null = [];
  readonly #commands = new Set<string>();
  #curings = new Map<string, Curing>();
  #curingsUntilMs = 0;
  #learned = new Map<string, LearnedHere>();

  constructor(parts: DryingParts) {
    this.#parts = parts;
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
    this.#follow(happened);
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
    this.touch();
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

  /** What was worked out and can't be any more. */
  #follow({ kind }: ShopHappened): void {
    if (kind === 'air' || kind === 'forecast' || kind === 'clock') this.#curings = new Map();
    else this.#learned = new Map();
  }

  /** A cement has changed. */
  touch(): void {
    this.#curings = new Map();
    this.#learned = new Map();
  }

  /** The coats whose clocks run, with what they show now. */
  open(): readonly KnownCoat[] {
    return Object.values(this.drying.coats).flatMap((coat) => {
      const cement = coat.ended === null ? this.cementOf(coat) : null;
      if (cement === null) return [];
      const clock = this.#clockOf(coat, cement);
      return isOver(coat, clock, this.#parts.nowUtcMs()) ? [] : [{ coat, cement, clock }];
    });
  }

  /** Coats whose clocks would run, of cements that are gone. */
  lost(): readonly Coat[] {
    return Object.values(this.drying.coats).filter(
      (coat) => coat.ended === null && this.cementOf(coat) === null,
    );
  }

  /** The cement as it was when the coat was put on, else as it is now; null where the settings don't have it any more. */
  cementOf({ cement: id, cementVersion }: Pick<Coat, 'cement' | 'cementVersion'>): Cement | null {
    const settings = this.#parts.settings();
    return (
      settings.cements.find((one) => one.id === id && one.version === cementVersion) ??
      currentCements(settings).find((one) => one.id === id) ??
      null
    );
  }

  /** How far a coat has come, s at its instructions' conditions. */
  cured({ fromUtcMs }: Coat, cement: Cement): Cured {
    return cured(this.#curingOf(cement), fromUtcMs, this.#parts.nowUtcMs());
  }

  /** What the taps have taught about a cement. */
  learnedOf(cement: Cement): LearnedHere {
    const key = `${cement.id} ${cement.version}`;
    const known = this.#learned.get(key);
    if (known !== undefined) return known;
    const versions = this.#parts.settings().cements.filter(({ id }) => id === cement.id);
    const learned = learn(taughtOf(Object.values(this.drying.coats), cement, versions));
    this.#learned.set(key, learned);
    return learned;
  }

  #clockOf(coat: Coat, cement: Cement): CoatClock {
    return coatClock({
      cement,
      fromUtcMs: coat.fromUtcMs,
      checks: coat.checks,
      curing: this.#curingOf(cement),
      learned: this.learnedOf(cement),
      nowUtcMs: this.#parts.nowUtcMs(),
      clockSet: coat.clockLost,
    });
  }

  #curingOf(cement: Cement): Curing {
    const nowUtcMs = this.#parts.nowUtcMs();
    // A clock that was set back is as good a reason as one that went on.
    if (nowUtcMs >= this.#curingsUntilMs || nowUtcMs < this.#curingsUntilMs - COURSE_MS) {
      this.#curings = new Map();
      this.#curingsUntilMs = nowUtcMs + COURSE_MS;
    }
    const key = `${cement.id} ${cement.version}`;
    const known = this.#curings.get(key);
    if (known !== undefined) return known;
    const { air, forecast } = this.drying;
    const curing = curingOf(cement, airCourse({ points: air, forecast, nowUtcMs }));
    this.#curings.set(key, curing);
    return curing;
  }
}

/** Whose last stage is long past is not asked after any more, whether somebody said that it is dry or not, ms. */
const OVER_AFTER_MS = 24 * 3_600_000;

function isOver({ checks }: Coat, { stages, state, wet }: CoatClock, nowUtcMs: number): boolean {
  // Found tacky it is wet for as long as nobody says otherwise.
  if (wet) return false;
  const last = stages.at(-1);
  if (state === 'dry') {
    const saidMs = Math.max(...checks.map(({ atUtcMs }) => atUtcMs));
    return nowUtcMs - saidMs > OVER_AFTER_MS;
  }
  return last?.latestMs !== null && last !== undefined && nowUtcMs - last.latestMs > OVER_AFTER_MS;
}

/** Whether a coat's vapour can burn: while it counts as wet for an iron. */
export const mayBurn = ({ cement, clock }: KnownCoat): boolean => cement.flammable && clock.wet;
