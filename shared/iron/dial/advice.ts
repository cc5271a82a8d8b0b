import type { HeatStage } from '../../heat/schedule.ts';
import { type ChartPoint, curveOf, type DialChart, type Falling, fallingIn, isCharted } from './chart.ts';
import { type Curve, lastUnder, placesOf, valueAt } from './pchip.ts';

/** Where to set an iron's dial for a heat stage, from its chart. */

export interface Wanted {
  readonly stage: Pick<HeatStage, 'lowC' | 'targetC' | 'highC'>;
  readonly fabricLimitC: number;
  /** Null: unset, or no bonded edge or tape is ironed. */
  readonly cementLimitC: number | null;
  /** Guard band of a measured temperature, K, at least 0 (JCGM 106); without lag, which each point of the chart allows for. */
  readonly uncertaintyK: number;
  /** How far the hottest spot of the plate is over the one that the chart was made at, K, at least 0. */
  readonly unevennessK: number;
}

/** What keeps the plate from being hotter: the lowest of those that hold. */
export type Ceiling = 'stage-high' | 'fabric-limit' | 'cement-limit';

export interface SetDial {
  readonly kind: 'set';
  readonly mark: number;
  readonly meanC: number;
  /** The hottest that the plate is to be expected to be, with uncertainty, unevenness and lag, degC. */
  readonly hottestC: number;
  /** True where the mark lies between those that were looked at: a guess by the shape of the chart. */
  readonly interpolated: boolean;
  /** True where a point that it rests on was typed from a hand thermometer. */
  readonly typed: boolean;
  /** Why the mean is not the target: a ceiling that peaks would pass, or the end of the chart; null: it is. */
  readonly heldBy: Ceiling | 'chart' | null;
  /** Highest mark at which no peak passes the fabric limit, nor the cement limit where one is given. */
  readonly highest: HighestMark | null;
}

export type CannotSet =
  /** Even at the best mark the swing is too wide, by so many K, to keep mean over low and peaks under the ceiling. */
  | { readonly kind: 'too-wide'; readonly byK: number; readonly ceiling: Ceiling }
  /** The marks looked at are all too cold or too hot; the nearest one and its mean or its hottest, degC. */
  | { readonly kind: 'too-cold'; readonly mark: number; readonly meanC: number }
  | { readonly kind: 'too-hot'; readonly mark: number; readonly hottestC: number }
  /** Fewer than two marks with peaks are charted. */
  | { readonly kind: 'few-marks'; readonly charted: number }
  | ({ readonly kind: 'falls' } & Falling);

export type Advice = SetDial | CannotSet;

export interface HighestMark {
  readonly mark: number;
  /** True where even the highest mark looked at keeps under the limit: there may be higher ones. */
  readonly atEnd: boolean;
}

/** The iron's own unevenness from peak to peak counts as two standard deviations (about 95 %, as k = 2 in the GUM). */
const SPREADS = 2;
/** What halving leaves undecided, K: a mean at the stage's very low is not under it. */
const ROUNDING_K = 1e-6;
/** A mean this near the target is the target, K. */
const NEAR_K = 0.05;

/** The figures of a chart that advice rests on, over the marks whose peaks are known. */
interface Known {
  readonly points: readonly ChartPoint[];
  readonly mean: Curve;
  readonly hottest: Curve;
}

/**
 * The mark whose mean comes as near to the stage's target as its peaks allow, with uncertainty, spread, lag and
 * unevenness under the stage's high and the limits; or why there is none.
 */
export function dialFor(chart: DialChart, wanted: Wanted): Advice {
  const falls = fallingIn(chart);
  if (falls !== null) return { kind: 'falls', ...falls };
  const known = knownOf(chart, wanted);
  if (known === null) return { kind: 'few-marks', charted: 0 };
  const { ceilingC, ceiling } = ceilingOf(wanted);
  const last = lastUnder(known.hottest, ceilingC);
  const mark = last === null ? null : nearestMark(known.mean, wanted.stage.targetC, last.x);
  const meanC = mark === null ? null : valueAt(known.mean, mark);
  if (last === null || mark === null || meanC === null || meanC < wanted.stage.lowC - ROUNDING_K)
    return cannot(known, wanted, last);
  const offK = meanC - wanted.stage.targetC;
  const held = offK < 0 && !last.atEnd && mark === last.x ? ceiling : 'chart';
  return {
    kind: 'set',
    mark,
    meanC,
    hottestC: valueAt(known.hottest, mark) ?? meanC,
    interpolated: !isCharted(chart, mark),
    typed: restsOnTyped(known.points, mark),
    heldBy: Math.abs(offK) < NEAR_K ? null : held,
    highest: highestMark(chart, wanted),
  };
}

/** The highest mark, from the lowest charted one up, at which no peak passes the limits; null where none is known. */
export function highestMark(chart: DialChart, wanted: Wanted): HighestMark | null {
  const known = knownOf(chart, wanted);
  if (known === null) return null;
  const { fabricLimitC, cementLimitC } = wanted;
  const last = lastUnder(known.hottest, Math.min(fabricLimitC, cementLimitC ?? fabricLimitC));
  return last === null ? null : { mark: last.x, atEnd: last.atEnd };
}

/** The hottest that the plate is to be expected at each mark whose peaks are known. */
export const hottestCurve = (
  points: readonly ChartPoint[],
  { uncertaintyK, unevennessK }: Pick<Wanted, 'uncertaintyK' | 'unevennessK'>,
): Curve | null =>
  // Uncertainty and spread are independent of one another, so their squares add; unevenness and lag are no chance.
  curveOf(points, ({ peakC, peakSpreadK, lagAllowanceK }) => {
    const byChanceK = Math.hypot(uncertaintyK, SPREADS * (peakSpreadK ?? 0));
    return peakC === null ? null : peakC + byChanceK + unevennessK + lagAllowanceK;
  });

function knownOf(chart: DialChart, wanted: Wanted): Known | null {
  const points = chart.points.filter((p) => p.peakC !== null);
  const mean = curveOf(points, (p) => p.meanC);
  const hottest = hottestCurve(points, wanted);
  return mean === null || hottest === null ? null : { points, mean, hottest };
}

function ceilingOf({ stage, fabricLimitC, cementLimitC }: Wanted): {
  readonly ceilingC: number;
  readonly ceiling: Ceiling;
} {
  const limitC = Math.min(fabricLimitC, cementLimitC ?? fabricLimitC);
  if (stage.highC <= limitC) return { ceilingC: stage.highC, ceiling: 'stage-high' };
  return { ceilingC: limitC, ceiling: limitC < fabricLimitC ? 'cement-limit' : 'fabric-limit' };
}

/** Up to `lastX`, where the mean is nearest to the target; the lowest of several. */
function nearestMark(mean: Curve, targetC: number, lastX: number): number | null {
  const marks = [...placesOf(mean, targetC), ...mean.xs, lastX].filter((x) => x <= lastX);
  let best: { readonly x: number; readonly offK: number } | null = null;
  for (const x of marks.sort((a, b) => a - b)) {
    const offK = Math.abs((valueAt(mean, x) ?? Number.POSITIVE_INFINITY) - targetC);
    if (best === null || offK < best.offK) best = { x, offK };
  }
  return best === null ? null : best.x;
}

/** Why no mark will do: `last` is the highest that keeps under the ceiling. */
function cannot({ points, mean, hottest }: Known, wanted: Wanted, last: HighestX): CannotSet {
  const { ceilingC, ceiling } = ceilingOf(wanted);
  const mark = last === null ? (mean.xs[0] ?? 0) : last.x;
  const meanC = valueAt(mean, mark) ?? ceilingC;
  const hottestC = valueAt(hottest, mark) ?? ceilingC;
  const tooWideK = hottestC - meanC - (ceilingC - wanted.stage.lowC);
  if (tooWideK > 0) return { kind: 'too-wide', byK: tooWideK, ceiling };
  if (points.length < 2) return { kind: 'few-marks', charted: points.length };
  return last === null ? { kind: 'too-hot', mark, hottestC } : { kind: 'too-cold', mark, meanC };
}

type HighestX = ReturnType<typeof lastUnder>;

/** Whether the marks on both sides, or the mark itself, include a typed one. */
function restsOnTyped(points: readonly ChartPoint[], mark: number): boolean {
  const below = points.findLast((p) => p.mark <= mark);
  const above = points.find((p) => p.mark >= mark);
  return below?.kind === 'typed' || above?.kind === 'typed';
}
