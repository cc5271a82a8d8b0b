/**
 * What an iron does at one dial mark, by the names under which the standards for electric irons measure it (IEC 60311,
 * GOST 307.2-95). Only the names are theirs: the text with their definitions was not at hand, so the definitions that
 * stand here are this project's own.
 */

/** One whole thermostat cycle, trough to trough, with the moment of its peak. */
export interface TimedCycle {
  readonly fromMs: number;
  readonly peakMs: number;
  readonly toMs: number;
  readonly peakC: number;
  /** The trough that ends it, degC. */
  readonly troughC: number;
  /** Mean over time, degC. */
  readonly meanC: number;
}

/** How the iron came up from cold. */
export interface HeatedUp {
  /** Where it stood before, degC. */
  readonly fromC: number;
  /** From the last moment at which the plate still stood as cold as before, until its first peak, s. */
  readonly timeS: number;
  /** The first peak, degC. */
  readonly peakC: number;
}

export interface DialFigures {
  /** How many whole cycles the figures rest on. */
  readonly cycles: number;
  /** Soleplate temperature: the mean over time of all of them, degC. */
  readonly meanC: number;
  /** Mean of the peaks and of the troughs, degC. */
  readonly peakC: number;
  readonly troughC: number;
  readonly highestPeakC: number;
  /** Cyclic fluctuation: mean of each cycle's peak less the trough that ends it, K. */
  readonly fluctuationK: number;
  /** Mean time from trough to trough, s. */
  readonly periodS: number;
  /**
   * Share of the time in which the plate rises: that of the heater as far as the plate tells, which goes on rising for a
   * while after the heater has gone off.
   */
  readonly duty: number;
  /** Standard deviations over the cycles, K and s; null of a single one. */
  readonly peakSpreadK: number | null;
  readonly meanSpreadK: number | null;
  readonly fluctuationSpreadK: number | null;
  readonly periodSpreadS: number | null;
  /** Heating-up time, s, and where it began, degC; null where it was not seen from cold to the first peak. */
  readonly heatingUpS: number | null;
  readonly heatingUpFromC: number | null;
  /** Heating-up excess: the first peak over the later mean, K; null likewise. */
  readonly heatingUpExcessK: number | null;
}

/** The figures of a stretch of cycles; null where there are none. */
export function figuresOf(cycles: readonly TimedCycle[], heatedUp: HeatedUp | null): DialFigures | null {
  if (cycles.length === 0) return null;
  const spansMs = cycles.map((c) => c.toMs - c.fromMs);
  const spanMs = sum(spansMs);
  const meanC = sum(cycles.map((c) => c.meanC * (c.toMs - c.fromMs))) / spanMs;
  const peaksC = cycles.map((c) => c.peakC);
  const swingsK = cycles.map((c) => c.peakC - c.troughC);
  return {
    cycles: cycles.length,
    meanC,
    peakC: meanOf(peaksC),
    troughC: meanOf(cycles.map((c) => c.troughC)),
    highestPeakC: Math.max(...peaksC),
    fluctuationK: meanOf(swingsK),
    periodS: spanMs / cycles.length / 1000,
    duty: sum(cycles.map((c) => c.peakMs - c.fromMs)) / spanMs,
    peakSpreadK: spreadOf(peaksC),
    meanSpreadK: spreadOf(cycles.map((c) => c.meanC)),
    fluctuationSpreadK: spreadOf(swingsK),
    periodSpreadS: spreadOf(spansMs.map((ms) => ms / 1000)),
    heatingUpS: heatedUp?.timeS ?? null,
    heatingUpFromC: heatedUp?.fromC ?? null,
    heatingUpExcessK: heatedUp === null ? null : heatedUp.peakC - meanC,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
export const meanOf = (values: readonly number[]): number => sum(values) / values.length;

/** Standard deviation of a sample; null of fewer than two values. */
export function spreadOf(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const mean = meanOf(values);
  return Math.sqrt(sum(values.map((value) => (value - mean) ** 2)) / (values.length - 1));
}
