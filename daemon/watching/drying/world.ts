import {
  type ClockSet,
  type Drying,
  dryingAfter,
  foldDrying,
  nothingDries,
} from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';

/** A clock that stood behind by less when the program started is let be, ms: times are rounded, and disks are slow. */
const BEHIND_MS = 2000;
/** A small board has its clock set so soon after it was started, ms. */
const BOOT_MS = 900_000;
/** With coats open the journal is told at least so often that the program runs, ms: as often as a probe's air. */
const QUIET_MS = 600_000;
/** Beyond that, after so much of the age of the youngest coat: one that is forgotten fills no disk. */
const QUIET_PART = 0.02;

type ClockEntry = Extract<ShopHappened, { kind: 'clock' }>;

/** A clock that was set, and how it stands now. */
export interface ClockStep {
  readonly byMs: number;
  /** How long the machine had been running then, ms. */
  readonly sinceBootMs: number;
  /** It is the first of this run. */
  readonly isFirst: boolean;
  readonly nowUtcMs: number;
}

/** What dries in the real shop or in the simulated one, and what the machine's clock has done to its times. */
export class World {
  readonly simulated: boolean;
  drying: Drying = nothingDries;
  /** The latest that earlier runs have; null: nothing, or it was not read yet. */
  #earlierUtcMs: number | null = null;

  constructor(simulated: boolean) {
    this.simulated = simulated;
  }

  fold(entry: ShopEntry): void {
    this.drying = foldDrying(this.drying, entry);
  }

  /** Begins anew with what earlier runs have. */
  begin(entries: readonly ShopEntry[]): void {
    this.drying = dryingAfter(entries.filter(({ simulated }) => simulated === this.simulated));
    this.#earlierUtcMs = this.drying.lastUtcMs;
  }

  /** Coats are open, and the journal was told nothing for long. */
  isQuiet(nowUtcMs: number): boolean {
    const { coats, lastUtcMs } = this.drying;
    const quietMs = nowUtcMs - (lastUtcMs ?? nowUtcMs);
    if (quietMs < QUIET_MS) return false;
    const open = Object.values(coats).filter(({ ended }) => ended === null);
    return quietMs >= QUIET_PART * (nowUtcMs - Math.max(...open.map(({ fromUtcMs }) => fromUtcMs)));
  }

  /**
   * What the journal has to have where the clock stands before what earlier runs have: nobody knows how long the program was
   * off. Simulated time may have gone faster than life: there it says nothing of the machine's clock. Null: it doesn't.
   * @param startUtcMs when this run began; null: nothing has happened in it
   */
  behind(startUtcMs: number | null, nowUtcMs: number): ClockEntry | null {
    const { lastUtcMs } = this.drying;
    if (lastUtcMs === null || nowUtcMs > lastUtcMs - BEHIND_MS) return null;
    // Before this run, all of it.
    const earlierByMs = (startUtcMs ?? nowUtcMs) - lastUtcMs - 1;
    const byMs = startUtcMs === null ? earlierByMs : 0;
    return { kind: 'clock', byMs, while: this.simulated ? 'simulated' : 'off', startUtcMs, earlierByMs };
  }

  /**
   * What the journal has to have of a clock that was set. Where that is soon after the machine was started it was not right
   * since: what happened before keeps the time that it had, unless that would be yet to come.
   */
  set({ byMs, sinceBootMs, isFirst, nowUtcMs }: ClockStep): ClockEntry {
    const bootUtcMs = Math.round(nowUtcMs - byMs - sinceBootMs);
    const { clock } = this.drying;
    // In this run, or in one before it since the machine was started.
    const off = clock !== null && isBehind(clock) && clock.atUtcMs >= bootUtcMs ? clock : null;
    const latestUtcMs = off === null ? this.#latestBefore(bootUtcMs) : off.fromUtcMs - 1 - off.byMs;
    return isFirst && sinceBootMs < BOOT_MS && nowUtcMs >= latestUtcMs
      ? {
          kind: 'clock',
          byMs,
          while: 'boot',
          startUtcMs: off === null ? bootUtcMs : off.fromUtcMs,
          earlierByMs: off === null ? 0 : -off.byMs,
        }
      : { kind: 'clock', byMs, while: 'running', startUtcMs: null, earlierByMs: byMs };
  }

  /** The latest that there was before; of one run more since then only what has a time of its own is known. */
  #latestBefore(utcMs: number): number {
    const earlierUtcMs = this.#earlierUtcMs ?? Number.NEGATIVE_INFINITY;
    return earlierUtcMs < utcMs ? earlierUtcMs : latestOf(this.drying, utcMs);
  }
}

const isBehind = ({ while: when }: ClockSet): boolean => when === 'off' || when === 'simulated';

function latestOf({ coats, air }: Drying, beforeUtcMs: number): number {
  const said = Object.values(coats).flatMap(({ saidUtcMs, checks }) => [
    saidUtcMs,
    ...checks.map(({ atUtcMs }) => atUtcMs),
  ]);
  return [...said, ...air.map(({ atUtcMs }) => atUtcMs)]
    .filter((ms) => ms < beforeUtcMs)
    .reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}
