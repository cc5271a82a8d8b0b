/**
 * What a probe's numbers scatter by and what they step in, learned from the numbers alone. The scatter is taken from how
 * far each reading lies off the straight line between its two neighbours: that knows nothing of the filter that uses
 * it, so a plate that moves in a way the filter did not expect can't make it deaf.
 */
export interface NoiseState {
  /** The last two readings, ms and degC. */
  readonly lastMs: number;
  readonly lastC: number;
  readonly beforeMs: number;
  readonly beforeC: number;
  /** The smallest change seen between neighbours, K; null while none was. No smaller than the probe's resolution. */
  readonly stepK: number | null;
  /** Scatter of one reading, K^2, with what its steps add to it. */
  readonly varianceK2: number;
  /** Readings that it stands on, at most `MEMORY`. */
  readonly count: number;
}

/** What is known of a probe's numbers from its maker or a calibration; null where nothing is. */
export interface KnownNoise {
  /** Standard deviation of its noise, K. */
  readonly noiseK: number | null;
  /** The step of its numbers, K. */
  readonly resolutionK: number | null;
}

/** Until readings tell, a scatter of 0.3 K stands in with the weight of so many readings. */
const FIRST_VARIANCE_K2 = 0.09;
const FIRST_COUNT = 8;
/** Readings after which an old one counts 1/e. */
const MEMORY = 120;
/** Neighbours further apart than this say more of the plate than of the probe, ms. */
const LONGEST_SPAN_MS = 4000;
/** One that lies further off than three times the scatter counts as three: a click of the thermostat is no noise. */
const FURTHEST = 9;
/** A change smaller than this is the dust of arithmetic, not a step, K. */
const DUST_K = 1e-6;
/** No probe is taken to be better than this, K: the filter would divide by nothing. */
const LEAST_STANDARD_K = 0.01;

export const startNoise = (atMs: number, plateC: number): NoiseState => ({
  lastMs: atMs,
  lastC: plateC,
  beforeMs: atMs,
  beforeC: plateC,
  stepK: null,
  varianceK2: FIRST_VARIANCE_K2,
  count: FIRST_COUNT,
});

/** Takes one more reading in. */
export function learnNoise(was: NoiseState, atMs: number, plateC: number): NoiseState {
  const changeK = Math.abs(plateC - was.lastC);
  const stepK = changeK > DUST_K && (was.stepK === null || changeK < was.stepK) ? changeK : was.stepK;
  const off2 = offTheLine(was, atMs, plateC);
  const count = off2 === null || was.count >= MEMORY ? was.count : was.count + 1;
  const capped = off2 === null ? was.varianceK2 : Math.min(off2, FURTHEST * was.varianceK2);
  return {
    lastMs: atMs,
    lastC: plateC,
    beforeMs: was.lastMs,
    beforeC: was.lastC,
    stepK,
    varianceK2: was.varianceK2 + (capped - was.varianceK2) / count,
    count,
  };
}

/** The square of how far the middle of three readings lies off the line between its neighbours, for a variance of 1. */
function offTheLine(was: NoiseState, atMs: number, plateC: number): number | null {
  const spanMs = atMs - was.beforeMs;
  const inMs = was.lastMs - was.beforeMs;
  if (inMs <= 0 || spanMs <= inMs || spanMs > LONGEST_SPAN_MS) return null;
  const share = inMs / spanMs;
  const offK = was.lastC - (was.beforeC + share * (plateC - was.beforeC));
  return (offK * offK) / (1 + share * share + (1 - share) * (1 - share));
}

/** Variance of a step's rounding: of an even spread over one step (GUM, JCGM 100:2008, F.2.2.1). */
export const roundingVarianceK2 = (stepK: number | null): number =>
  stepK === null ? 0 : (stepK * stepK) / 12;

/** Variance of one reading against the junction, K^2: noise and rounding. What is known goes before what was learned. */
export function readingVarianceK2(learned: NoiseState, known: KnownNoise): number {
  const rounding = roundingVarianceK2(known.resolutionK ?? learned.stepK);
  const noise = known.noiseK === null ? learned.varianceK2 : known.noiseK * known.noiseK + rounding;
  return Math.max(noise, rounding, LEAST_STANDARD_K * LEAST_STANDARD_K);
}
