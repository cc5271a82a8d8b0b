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
/** Readings that span less than this give no slope, s. */
const LEAST_SPAN_S = 0.5;

/** Takes one more reading in. Ages are relative to the newest one, so that the sums stay small. */
export function addToSlope(state: SlopeState | null, atMs: number, plateC: number): SlopeState {
  if (state === null || atMs < state.atMs) return { atMs, w: 1, wt: 0, wtt: 0, wc: plateC, wtc: 0 };
  const dtS = (atMs - state.atMs) / 1000;
  const fade = Math.exp(-dtS / FADE_S);
  const w = state.w * fade;
  const wt = state.wt * fade;
  const wc = state.wc * fade;
  return {
    atMs,
    w: w + 1,
    wt: wt - dtS * w,
    wtt: state.wtt * fade - 2 * dtS * wt + dtS * dtS * w,
    wc: wc + plateC,
    wtc: state.wtc * fade - dtS * wc,
  };
}

/** Slope in K/s, or null while there is too little to tell. */
export function slopeKPerS(state: SlopeState | null): number | null {
  if (state === null) return null;
  const spread = state.w * state.wtt - state.wt * state.wt;
  if (spread <= state.w * state.w * LEAST_SPAN_S * LEAST_SPAN_S * 0.08) return null;
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
