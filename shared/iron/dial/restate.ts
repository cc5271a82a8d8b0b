import type { Calibration } from '../../calibration/calibration.ts';
import { type Correction, corrected, uncorrected } from '../../calibration/correction.ts';
import type { ChartPoint, MadeWith } from './chart.ts';
import type { DrawnCycle, DrawnStretch } from './drawing.ts';
import type { KeptDial, LastStretch, LastWarmUp } from './kept.ts';

/**
 * What a probe measured of a dial, brought under a later calibration of that probe. Corrections are straight lines, so
 * this is exact: means, peaks and troughs go along the line, differences and spreads stretch with its slope.
 */
interface Line {
  readonly c: (c: number) => number;
  readonly k: (k: number) => number;
}

/** What was read under one correction, as the other gives it; null: uncorrected. */
function lineBetween(from: Correction | null, to: Correction | null): Line {
  const scale = (1 + (to?.b2 ?? 0)) / (1 + (from?.b2 ?? 0));
  const turned = (c: number): number => {
    const readC = from === null ? c : uncorrected(c, from);
    return to === null ? readC : corrected(readC, to);
  };
  return { c: turned, k: (k) => scale * k };
}

const orNull = (turn: (value: number) => number, value: number | null): number | null =>
  value === null ? null : turn(value);

/**
 * What is kept of a dial, under the calibration `to` where that is of the probe that measured it. What was typed stays
 * as it is, and so does what doesn't say which probe measured it.
 * @param earlier the calibrations up to then, of any probe
 */
export function restatedDial(
  dial: KeptDial,
  to: Pick<Calibration, 'id' | 'probe' | 'correction'>,
  earlier: readonly Pick<Calibration, 'id' | 'correction'>[],
): KeptDial {
  const lineOf = (madeWith: MadeWith | null): Line | null => {
    if (madeWith?.probe !== to.probe || madeWith.calibration === to.id) return null;
    const from = earlier.find(({ id }) => id === madeWith.calibration) ?? null;
    // A correction that is gone can't be taken out again.
    return from === null && madeWith.calibration !== null
      ? null
      : lineBetween(from === null ? null : from.correction, to.correction);
  };
  const now = (was: MadeWith | null): MadeWith => ({ ...was, probe: to.probe, calibration: to.id });
  const point = (p: ChartPoint): ChartPoint => {
    const line = lineOf(p.madeWith);
    return line === null ? p : { ...p, ...restatedPoint(p, line), madeWith: now(p.madeWith) };
  };
  const last = (l: LastStretch): LastStretch => {
    const line = lineOf(l.madeWith);
    return line === null ? l : { ...l, figures: restatedFigures(l.figures, line), madeWith: now(l.madeWith) };
  };
  const drawn = (d: DrawnStretch): DrawnStretch => {
    const line = lineOf(d.madeWith);
    return line === null
      ? d
      : { ...d, cycles: d.cycles.map((one) => restatedCycle(one, line)), madeWith: now(d.madeWith) };
  };
  const warmUp = (w: LastWarmUp): LastWarmUp => {
    const line = lineOf(w.madeWith);
    if (line === null) return w;
    const { heatingUpFromC, heatingUpExcessK } = w;
    return {
      ...w,
      heatingUpFromC: line.c(heatingUpFromC),
      heatingUpExcessK: line.k(heatingUpExcessK),
      madeWith: now(w.madeWith),
    };
  };
  return {
    ...dial,
    warmUp: dial.warmUp === null ? null : warmUp(dial.warmUp),
    drawn: dial.drawn.map(drawn),
    chart: { points: dial.chart.points.map(point), earlier: dial.chart.earlier.map(point) },
    since: dial.since.map(point),
    last: dial.last === null ? null : last(dial.last),
  };
}

const restatedPoint = (
  { meanC, peakC, troughC, peakSpreadK, meanSpreadK, lagAllowanceK }: ChartPoint,
  { c, k }: Line,
) => ({
  meanC: c(meanC),
  peakC: orNull(c, peakC),
  troughC: orNull(c, troughC),
  peakSpreadK: orNull(k, peakSpreadK),
  meanSpreadK: orNull(k, meanSpreadK),
  lagAllowanceK: k(lagAllowanceK),
});

const restatedCycle = (cycle: DrawnCycle, { c }: Line): DrawnCycle => ({
  ...cycle,
  peakC: c(cycle.peakC),
  troughC: c(cycle.troughC),
  meanC: c(cycle.meanC),
});

const restatedFigures = (f: LastStretch['figures'], { c, k }: Line): LastStretch['figures'] => ({
  ...f,
  meanC: c(f.meanC),
  peakC: c(f.peakC),
  troughC: c(f.troughC),
  highestPeakC: c(f.highestPeakC),
  fluctuationK: k(f.fluctuationK),
  peakSpreadK: orNull(k, f.peakSpreadK),
  meanSpreadK: orNull(k, f.meanSpreadK),
  fluctuationSpreadK: orNull(k, f.fluctuationSpreadK),
  heatingUpFromC: orNull(c, f.heatingUpFromC),
  heatingUpExcessK: orNull(k, f.heatingUpExcessK),
});
