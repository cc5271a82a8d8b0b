import { z } from 'zod';
import type { HeatStage } from '../../heat/schedule.ts';
import { hottestCurve, type Wanted } from './advice.ts';
import { curveOf, type DialChart, madeWithSchema } from './chart.ts';
import type { TimedCycle } from './figures.ts';
import { dialMarkSchema } from './mark.ts';
import { type Curve, valueAt } from './pchip.ts';

/** What is drawn of an iron: the cycles at each mark of its dial, and its dial chart as a curve. */

const c = z.number();
const s = z.number().min(0);

/** One cycle of a stretch; times since the stretch's first trough, s. */
const drawnCycleSchema = z
  .strictObject({ fromS: s, peakS: s, toS: s, peakC: c, troughC: c, meanC: c })
  .readonly();

/** More are too narrow to be told apart on a phone. */
const MOST_CYCLES = 8;

/** The last cycles of the last stretch at a mark. */
export const drawnStretchSchema = z
  .strictObject({
    mark: dialMarkSchema,
    at: z.iso.datetime({ offset: true }),
    cycles: z.array(drawnCycleSchema).min(1).max(MOST_CYCLES).readonly(),
    madeWith: madeWithSchema.nullable(),
  })
  .readonly();

export type DrawnCycle = z.infer<typeof drawnCycleSchema>;
export type DrawnStretch = z.infer<typeof drawnStretchSchema>;

/** The cycles of a stretch, as they are kept to be drawn. */
export function drawnCycles(cycles: readonly TimedCycle[]): readonly DrawnCycle[] {
  const last = cycles.slice(-MOST_CYCLES);
  const zeroMs = last[0]?.fromMs ?? 0;
  const sinceS = (ms: number): number => (ms - zeroMs) / 1000;
  return last.map(({ fromMs, peakMs, toMs, peakC, troughC, meanC }) => ({
    fromS: sinceS(fromMs),
    peakS: sinceS(peakMs),
    toS: sinceS(toMs),
    peakC,
    troughC,
    meanC,
  }));
}

export interface Turn {
  readonly s: number;
  readonly plateC: number;
}

/**
 * The turning points of cycles, as lines to be drawn: one for cycles that follow on each other, since where some were
 * left out nobody knows what the plate did.
 */
export function turnsOf(cycles: readonly DrawnCycle[]): readonly (readonly Turn[])[] {
  const lines: Turn[][] = [];
  let endedS = Number.NaN;
  for (const { fromS, peakS, toS, peakC, troughC } of cycles) {
    if (fromS !== endedS) lines.push([]);
    lines.at(-1)?.push({ s: peakS, plateC: peakC }, { s: toS, plateC: troughC });
    endedS = toS;
  }
  return lines;
}

/** The stage that a mark is for, by its mean: the one whose target is nearest, the first of equals; null: there are none. */
export const stageNear = <S extends Pick<HeatStage, 'targetC'>>(
  stages: readonly S[],
  meanC: number,
): S | null =>
  stages.reduce<S | null>(
    (best, one) =>
      best === null || Math.abs(one.targetC - meanC) < Math.abs(best.targetC - meanC) ? one : best,
    null,
  );

export interface CurvePoint {
  readonly mark: number;
  readonly plateC: number;
}

/** Points between two ends of the chart: enough for a curve to look round. */
const PIECES = 48;

function drawnCurve(curve: Curve | null): readonly CurvePoint[] {
  const from = curve?.xs[0];
  const to = curve?.xs.at(-1);
  if (curve === null || from === undefined || to === undefined || to <= from) return [];
  const evenly = Array.from({ length: PIECES + 1 }, (_, i) => from + ((to - from) * i) / PIECES);
  // The charted marks themselves too: the curve goes through them.
  const marks = [...new Set([...evenly, ...curve.xs])].sort((a, b) => a - b);
  return marks.flatMap((mark) => {
    const plateC = valueAt(curve, mark);
    return plateC === null ? [] : [{ mark, plateC }];
  });
}

/** The chart's mean, and the hottest that the plate is to be expected at each mark; empty for fewer than two marks. */
export const drawnChart = (
  chart: DialChart,
  wanted: Wanted,
): { readonly mean: readonly CurvePoint[]; readonly hottest: readonly CurvePoint[] } => ({
  mean: drawnCurve(curveOf(chart.points, (p) => p.meanC)),
  hottest: drawnCurve(hottestCurve(chart.points, wanted)),
});
