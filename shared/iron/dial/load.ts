import { TURN_K } from '../turning.ts';
import { type DialFigures, figuresOf, type TimedCycle } from './figures.ts';
import { type Look, levelOf, timedCycleOf } from './look.ts';
import type { DialMark } from './mark.ts';

/**
 * Drop of the plate temperature under load, by our own definition (see `figures.ts`): how far mean and trough fall on
 * the work against what they were on the rest at the same mark.
 */
export interface LoadFound {
  readonly mark: DialMark;
  readonly fromMs: number;
  readonly toMs: number;
  /** Fall of the mean over whole cycles, K; null where there were fewer than two on the work. */
  readonly meanDropK: number | null;
  /** How far the lowest trough on the work was under the mean trough on the rest, K; below 0 it was over it. */
  readonly troughDropK: number;
  readonly cycles: number;
}

/** What the iron did on its rest, to hold the work against. */
export interface Unloaded extends Pick<DialFigures, 'meanC' | 'troughC' | 'periodS'> {
  readonly mark: DialMark;
}

/** A spell of work at one mark. */
export interface Load {
  readonly mark: DialMark;
  readonly fromMs: number;
  /** Lowest since it began, and the lowest from which the plate has come back, degC. */
  readonly lowestC: number;
  readonly troughC: number | null;
  readonly cycles: readonly TimedCycle[];
}

/** A spell shorter than this or one and a half cycles may have missed its trough, ms. */
const SHORTEST_MS = 60_000;
const SHORTEST_PERIODS = 1.5;
const KEEP_CYCLES = 16;
const ENOUGH_CYCLES = 2;

/** A spell of work that begins here; null where the dial or the plate isn't known. */
export function beginLoad(look: Look): Load | null {
  const levelC = levelOf(look);
  if (look.place !== 'on-work' || look.dial === null || levelC === null) return null;
  return { mark: look.dial.mark, fromMs: look.tMs, lowestC: levelC, troughC: null, cycles: [] };
}

/** Goes on with a spell of work. */
export function followLoad(load: Load, look: Look): Load {
  const levelC = levelOf(look);
  if (levelC === null) return load;
  const lowestC = Math.min(load.lowestC, levelC);
  // A plate that is only on its way down has no trough yet: it may have been switched off.
  const troughC = levelC >= lowestC + TURN_K ? Math.min(lowestC, load.troughC ?? lowestC) : load.troughC;
  const cycle = timedCycleOf(look);
  const own = cycle !== null && cycle.fromMs >= load.fromMs;
  const cycles = own ? [...load.cycles, cycle].slice(-KEEP_CYCLES) : load.cycles;
  return { ...load, lowestC, troughC, cycles };
}

/** What a spell of work that ends at `toMs` has shown; null where it was too short or there is nothing to compare. */
export function loadFound(load: Load, rest: Unloaded | null, toMs: number): LoadFound | null {
  if (rest === null || rest.mark !== load.mark || load.troughC === null) return null;
  const shortestMs = Math.max(SHORTEST_MS, SHORTEST_PERIODS * rest.periodS * 1000);
  if (toMs - load.fromMs < shortestMs) return null;
  const figures = load.cycles.length >= ENOUGH_CYCLES ? figuresOf(load.cycles, null) : null;
  return {
    mark: load.mark,
    fromMs: load.fromMs,
    toMs,
    meanDropK: figures === null ? null : rest.meanC - figures.meanC,
    troughDropK: rest.troughC - load.troughC,
    cycles: load.cycles.length,
  };
}
