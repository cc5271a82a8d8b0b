import type { Calibration } from '../calibration/calibration.ts';
import type { Unevenness } from '../iron/evenness.ts';
import type { ProbeSettings } from './probe.ts';

/** A probe with the calibration that holds for it; null: none. */
export interface WatchedProbe extends ProbeSettings {
  readonly calibration: Calibration | null;
  /** There while it is being calibrated off its iron: it goes into ice and boiling water. */
  readonly dipped?: true;
  /** There where a spot of its plate is known to be hotter than the one that it sits at. */
  readonly unevenness?: Unevenness;
}
