/** One whole thermostat cycle, from trough to trough. */
export interface Cycle {
  readonly fromMs: number;
  readonly toMs: number;
  readonly peakC: number;
  /** The lower of the two troughs, degC. */
  readonly troughC: number;
  /** Mean over time, degC. */
  readonly meanC: number;
}
