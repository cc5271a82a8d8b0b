import type { ReachedStage } from './visit.ts';

/** What one area has had, over all its visits. */
export interface AreaHeat {
  /** The highest stage in contact; null: none yet. Never falls between corrections. */
  readonly reached: ReachedStage | null;
  /** True where every visit that reached it was presumed. */
  readonly presumed: boolean;
  /** Of the plate in contact, degC; null where none is known. */
  readonly peakC: number | null;
  readonly guardBandK: number;
  readonly contactMs: number;
  readonly inBandMs: number;
  /** Laps at the stage reached, and all laps. A visit is one; so is a lap over the whole side. */
  readonly lapsAtStage: number;
  readonly laps: number;
  readonly lastUtcMs: number | null;
}

export const untouched: AreaHeat = {
  reached: null,
  presumed: false,
  peakC: null,
  guardBandK: 0,
  contactMs: 0,
  inBandMs: 0,
  lapsAtStage: 0,
  laps: 0,
  lastUtcMs: null,
};

/** By the id of the area. */
export type AreaHeats = Readonly<Record<string, AreaHeat>>;
