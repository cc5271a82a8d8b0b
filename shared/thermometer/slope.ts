/**
 * Level and slope of a noisy temperature: least squares of a straight line with weights that fade by age, kept as five
 * sums, so that a reading costs the same however long the history is.
 */
export interface SlopeState {
  readonly atMs: number;
  readonly w: number;
  readonly wt: number;
  readonly wtt: number;
  readonly wc: number;
  readonly wtc: number;
}

/** A reading this much older counts 1/e as much, s. */
const FADE_S = 4;
/** Readings that span less than this give no slope, s: a coarse probe's single step would look like a rush. */
const LEAST_SPAN_S = 1.5;
/** Variance of evenly spaced times, as a share of their span squared. */
const EVEN_VARIANCE = 1 / 12;

/** Takes one more reading in. Ages are relative to the newest one, so that the sums stay small. */
export function addToSlope(state: SlopeState | null, atMs: number, plateC: number): SlopeState {
  if (state === null) return { atMs, w: 1, wt: 0, wtt: 0, wc: plateC, wtc: 0 };
  // A better estimate of the device's clock can put a line slightly before the one ahead of it.
  const dtS = Math.max(0, atMs - state.atMs) / 1000;
  const fade = Math.exp(-dtS / FADE_S);
  const w = state.w * fade;
  const wt = state.wt * fade;
  const wc = state.wc * fade;
  return {
    atMs: Math.max(atMs, state.atMs),
    w: w + 1,
    wt: wt - dtS * w,
    wtt: state.wtt * fade - 2 * dtS * wt + dtS * dtS * w,
    wc: wc + plateC,
    wtc: state.wtc * fade - dtS * wc,
  };
}

/** Slope in K/s, or null while the readings span less than `leastS` and there is too little to tell. */
export function slopeKPerS(state: SlopeState | null, leastS = LEAST_SPAN_S): number | null {
  if (state === null) return null;
  const spread = state.w * state.wtt - state.wt * state.wt;
  if (spread <= state.w * state.w * leastS * leastS * EVEN_VARIANCE) return null;
  return (state.w * state.wtc - state.wt * state.wc) / spread;
}

/** Under this slope a plate counts as steady, K/s (our own choice: 1 degC in 20 s). */
export const STEADY_K_PER_S = 0.05;

export type Trend = 'steady' | 'rising' | 'falling';

export function trendOf(kPerS: number | null): Trend | null {
  if (kPerS === null) return null;
  if (Math.abs(kPerS) < STEADY_K_PER_S) return 'steady';
  return kPerS > 0 ? 'rising' : 'falling';
}
