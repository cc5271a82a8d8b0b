import {
  type KnownNoise,
  learnNoise,
  type NoiseState,
  readingVarianceK2,
  roundingVarianceK2,
  startNoise,
} from './noise.ts';

/**
 * The plate behind a probe's readings: a Kalman filter whose state is the junction's temperature, the plate's
 * temperature and the plate's slope. The junction trails the plate as a first-order lag; the slope wanders. Where the
 * lag is not known the junction stands for the plate. Plain numbers, so that it survives JSON and costs little.
 */
export interface LagFilter {
  readonly atMs: number;
  readonly junctionC: number;
  readonly plateC: number;
  readonly slopeKPerS: number;
  /** Covariances of junction (j), plate (p) and slope (s). */
  readonly jj: number;
  readonly jp: number;
  readonly js: number;
  readonly pp: number;
  readonly ps: number;
  readonly ss: number;
  readonly noise: NoiseState;
}

/** A measured time constant and its standard uncertainty, s. */
export interface KnownLag {
  readonly tauS: number;
  readonly standardS: number;
}

/** What is known of a probe; each part null where it isn't. */
export interface KnownProbe extends KnownNoise {
  readonly lag: KnownLag | null;
}

/** Of a probe of which neither noise nor step nor lag is known: the readings have to show them. */
export const unmeasuredProbe: KnownProbe = { noiseK: null, resolutionK: null, lag: null };

/**
 * How fast a plate's slope wanders, K^2/s^3 (our own choice, by simulation of many irons): a thermostat's click turns
 * some 1 K/s within the 5 to 10 s that heat takes from the heater to the plate, cloth turns 0.3 K/s at once.
 */
const WANDER_K2_PER_S3 = 0.02;
/** Before the first readings a plate may rise or fall by so much, K/s. */
const FIRST_SLOPE_K_PER_S = 1;
/** After a gap of this length nothing of before holds, ms. */
const GAP_MS = 30_000;

/**
 * Takes one more reading in.
 * @param readC what the probe reads, degC
 */
export function trackPlate(was: LagFilter | null, atMs: number, readC: number, probe: KnownProbe): LagFilter {
  if (was === null || atMs - was.atMs > GAP_MS) return begin(was, atMs, readC, probe);
  const noise = learnNoise(was.noise, atMs, readC);
  return correct(predict(was, atMs, probe.lag?.tauS ?? 0), readC, noise, probe);
}

function begin(was: LagFilter | null, atMs: number, readC: number, probe: KnownProbe): LagFilter {
  const noise = was === null ? startNoise(atMs, readC) : learnNoise(was.noise, atMs, readC);
  const read = readingVarianceK2(noise, probe);
  const ss = FIRST_SLOPE_K_PER_S * FIRST_SLOPE_K_PER_S;
  // A plate that has moved evenly for a while is a time constant ahead of the junction.
  const ps = (probe.lag?.tauS ?? 0) * ss;
  return {
    atMs,
    junctionC: readC,
    plateC: readC,
    slopeKPerS: 0,
    jj: read,
    jp: read,
    js: 0,
    pp: read + (probe.lag?.tauS ?? 0) * ps,
    ps,
    ss,
    noise,
  };
}

/** The state at `atMs`, before what was read then. The plate is taken to go on in a straight line. */
function predict(was: LagFilter, atMs: number, tauS: number): LagFilter {
  // A better estimate of the device's clock can put a line slightly before the one ahead of it.
  const dtS = Math.max(0, atMs - was.atMs) / 1000;
  // The exact answer of a lag to a ramp: what stays of the junction, what comes of the plate, what of its slope.
  const stays = tauS > 0 ? Math.exp(-dtS / tauS) : 0;
  const comes = 1 - stays;
  const ramp = dtS - tauS * comes;
  const jj1 = stays * was.jj + comes * was.jp + ramp * was.js;
  const jp1 = stays * was.jp + comes * was.pp + ramp * was.ps;
  const js1 = stays * was.js + comes * was.ps + ramp * was.ss;
  const pp1 = was.pp + dtS * was.ps;
  const ps1 = was.ps + dtS * was.ss;
  const qss = WANDER_K2_PER_S3 * dtS;
  const qps = (qss * dtS) / 2;
  const qpp = (qss * dtS * dtS) / 3;
  // What has wandered in since reaches the junction in the part that a ramp does.
  const part = dtS > 0 ? ramp / dtS : 0;
  return {
    atMs: Math.max(atMs, was.atMs),
    junctionC: stays * was.junctionC + comes * was.plateC + ramp * was.slopeKPerS,
    plateC: was.plateC + dtS * was.slopeKPerS,
    slopeKPerS: was.slopeKPerS,
    jj: stays * jj1 + comes * jp1 + ramp * js1 + part * part * qpp,
    jp: jp1 + dtS * js1 + part * qpp,
    js: js1 + part * qps,
    pp: pp1 + dtS * ps1 + qpp,
    ps: ps1 + qps,
    ss: was.ss + qss,
    noise: was.noise,
  };
}

function correct(ahead: LagFilter, readC: number, noise: NoiseState, probe: KnownProbe): LagFilter {
  const off = readC - ahead.junctionC;
  const total = ahead.jj + readingVarianceK2(noise, probe);
  const gainJ = ahead.jj / total;
  const gainP = ahead.jp / total;
  const gainS = ahead.js / total;
  return {
    atMs: ahead.atMs,
    junctionC: ahead.junctionC + gainJ * off,
    plateC: ahead.plateC + gainP * off,
    slopeKPerS: ahead.slopeKPerS + gainS * off,
    jj: ahead.jj - gainJ * ahead.jj,
    jp: ahead.jp - gainJ * ahead.jp,
    js: ahead.js - gainJ * ahead.js,
    pp: ahead.pp - gainP * ahead.jp,
    ps: ahead.ps - gainP * ahead.js,
    ss: ahead.ss - gainS * ahead.js,
    noise,
  };
}

/**
 * The longest lag that is allowed for where none was measured, s: an allowance, not a measurement (our own choice: a
 * junction under a washer or in cement trails by 1 to 5 s, common practice, no source).
 */
export const UNMEASURED_LAG_S = 5;

/** The plate as the readings tell of it. */
export interface PlateEstimate {
  /** Corrected for lag where that is known, else where the junction is. */
  readonly plateC: number;
  readonly slopeKPerS: number;
  /** Standard uncertainties from noise, resolution and the lag's own; not of the calibration. */
  readonly standardK: number;
  readonly slopeStandardKPerS: number;
  /**
   * How far the plate may be ahead of `plateC` for a lag that was not measured, K: above it where it rises, below
   * (negative) where it falls, about 0 at rest or where the lag is known. To one side only.
   */
  readonly aheadK: number;
}

/** What the filter has found by its last reading. */
export function plateEstimate(filter: LagFilter, probe: KnownProbe): PlateEstimate {
  const { plateC, slopeKPerS, pp, ss, noise } = filter;
  // A coarse probe on a steady plate repeats itself: its rounding is not averaged away.
  const rounding = roundingVarianceK2(probe.resolutionK ?? noise.stepK);
  const ofLag = probe.lag === null ? 0 : probe.lag.standardS * slopeKPerS;
  const square = slopeKPerS * slopeKPerS;
  // A slope well within its own uncertainty is no movement: counted in the part by which it stands out.
  const moves = square / (square + ss / 4);
  return {
    plateC,
    slopeKPerS,
    standardK: Math.sqrt(pp + rounding + ofLag * ofLag),
    slopeStandardKPerS: Math.sqrt(ss),
    aheadK: probe.lag === null ? UNMEASURED_LAG_S * slopeKPerS * moves : 0,
  };
}
