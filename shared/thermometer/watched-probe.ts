import type { Calibration } from '../calibration/calibration.ts';
import type { Placed } from './place.ts';
import type { ProbeSettings } from './probe.ts';

/** A probe with the calibration that holds for it; null: none. */
export interface WatchedProbe extends ProbeSettings, Placed {
  readonly calibration: Calibration | null;
  /** There while it is being calibrated off its iron: it goes into ice and boiling water. */
  readonly dipped?: true;
}
