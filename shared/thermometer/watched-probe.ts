import type { Calibration } from '../calibration/calibration.ts';
import type { Unevenness } from '../iron/evenness.ts';
import type { Placed } from './place.ts';
import type { ProbeSettings } from './probe.ts';

/** A probe with the calibration that holds for it; null: none. */
export interface WatchedProbe extends ProbeSettings, Placed, OffPlate {
  readonly calibration: Calibration | null;
  /** There where a spot of its plate is known to be hotter than the one that it sits at. */
  readonly unevenness?: Unevenness;
}

/** What is known of a probe that a procedure takes off its plate; nothing of any other. */
export interface OffPlate {
  /** There while it is being calibrated or timed off its iron: it goes into ice and boiling water. */
  readonly dipped?: true;
  /** Until then it may be clipped onto a hot plate for its step, ms of the watch's clock. */
  readonly clippedUntilMs?: number;
}
