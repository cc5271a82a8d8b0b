import { z } from 'zod';
import { conversionOf, type ProbeSettings } from '../../thermometer/probe.ts';
import { plateTemperatureC } from '../../units/plate-temperature.ts';
import { lagAllowanceK } from './lag.ts';
import { isSameMark } from './mark.ts';
import { type Curve, curveThrough, valueAt } from './pchip.ts';
import type { StretchFound } from './stretch.ts';

/** The dial chart of one iron: what its plate does at each mark that was looked at. */

const chartPointKinds = ['measured', 'typed'] as const;

const spreadK = z.number().min(0).max(400);

/** The probe that measured something, and how it was read. */
export const madeWithSchema = z
  .strictObject({
    probe: z.string().min(1).max(300),
    /** The calibration that its readings were corrected with; null: none. */
    calibration: z.string().max(64).nullable(),
    /** `conversionOf` it; older ones don't tell. */
    readAs: z.string().max(40).optional(),
  })
  .readonly();
export type MadeWith = z.infer<typeof madeWithSchema>;

/** What a probe measures something with as it is set now. */
export const madeWithOf = (
  probe: Pick<ProbeSettings, 'id' | 'thermocouple' | 'unit'> & {
    readonly calibration: { readonly id: string } | null;
  },
): MadeWith => ({
  probe: probe.id,
  calibration: probe.calibration?.id ?? null,
  readAs: conversionOf(probe),
});

export const chartPointSchema = z
  .strictObject({
    /** On the dial's own scale (`markNumber`). */
    mark: z.number().min(0).max(1000),
    /** By a probe, or read from a hand thermometer and typed. */
    kind: z.enum(chartPointKinds),
    meanC: plateTemperatureC,
    /** Mean of the peaks and of the troughs; null where only one temperature was typed. */
    peakC: plateTemperatureC.nullable(),
    troughC: plateTemperatureC.nullable(),
    /** How many whole cycles it rests on; 0 where none was seen. */
    cycles: z.number().int().min(0),
    /** Standard deviation of the peaks; null of fewer than two. */
    peakSpreadK: spreadK.nullable(),
    /** Standard deviation of the cycles' means; null likewise. */
    meanSpreadK: spreadK.nullable(),
    /** How far the true peaks can be over those shown, by the probe's lag; 0 for typed ones, which aren't smoothed. */
    lagAllowanceK: spreadK,
    at: z.iso.datetime({ offset: true }),
    /** Null of a typed one, and where that was not kept: it stands as it is whatever a later calibration says. */
    madeWith: madeWithSchema.nullable().default(null),
  })
  .refine((p) => (p.troughC ?? p.meanC) <= p.meanC && p.meanC <= (p.peakC ?? p.meanC), {
    message: 'trough, mean and peak must rise in that order',
    path: ['meanC'],
  })
  .readonly();

/** More would only make the settings large. */
const MOST_POINTS = 40;
const KEEP_EARLIER = 100;

export const dialChartSchema = z
  .strictObject({
    /** The one that counts at each mark, by rising mark. */
    points: z.array(chartPointSchema).max(MOST_POINTS).readonly(),
    /** Those that newer ones replaced, in the order in which that happened. */
    earlier: z.array(chartPointSchema).max(KEEP_EARLIER).readonly(),
  })
  .readonly();

export type ChartPoint = z.infer<typeof chartPointSchema>;
export type DialChart = z.infer<typeof dialChartSchema>;

export const emptyChart: DialChart = { points: [], earlier: [] };

/**
 * The chart point of a measured stretch.
 * @param mark from `markNumber`
 * @param at when, from whoever has a clock
 * @param by the probe with its lag: time constant on the plate, s; where it isn't known, what is allowed for it
 */
export const pointOf = (
  { figures }: Pick<StretchFound, 'figures'>,
  mark: number,
  at: string,
  { lagS, madeWith }: { readonly lagS: number; readonly madeWith: MadeWith | null },
): ChartPoint => ({
  mark,
  kind: 'measured',
  meanC: figures.meanC,
  // The mean is over time, the peaks' is over cycles: of very uneven cycles they could change places.
  peakC: Math.max(figures.peakC, figures.meanC),
  troughC: Math.min(figures.troughC, figures.meanC),
  cycles: figures.cycles,
  peakSpreadK: figures.peakSpreadK,
  meanSpreadK: figures.meanSpreadK,
  lagAllowanceK: lagAllowanceK(figures, lagS),
  at,
  madeWith,
});

/** The chart with one more point: it counts from now on, and what counted at its mark is kept as earlier. */
export function withPoint(chart: DialChart, point: ChartPoint): DialChart {
  const isSame = (p: ChartPoint): boolean => isSameMark(p.mark, point.mark);
  const points = [...chart.points.filter((p) => !isSame(p)), point].sort((a, b) => a.mark - b.mark);
  const earlier = [...chart.earlier, ...chart.points.filter(isSame)].slice(-KEEP_EARLIER);
  return { points: points.slice(0, MOST_POINTS), earlier };
}

/** Whether a mark is one that was looked at, or lies between such ones. */
export const isCharted = (chart: DialChart, mark: number): boolean =>
  chart.points.some((p) => isSameMark(p.mark, mark));

/** A curve of one figure over the marks that have it; null where none has. */
export function curveOf(
  points: readonly ChartPoint[],
  figure: (point: ChartPoint) => number | null,
): Curve | null {
  const known = points.flatMap((p) => {
    const y = figure(p);
    return y === null ? [] : [{ x: p.mark, y }];
  });
  return known.length === 0 ? null : curveThrough(known);
}

const valueOf = (curve: Curve | null, mark: number): number | null =>
  curve === null ? null : valueAt(curve, mark);

/** Mean plate temperature at a mark, degC, between those looked at too; null outside them. */
export const meanAt = ({ points }: DialChart, mark: number): number | null =>
  valueOf(
    curveOf(points, (p) => p.meanC),
    mark,
  );

/** Mean of the peaks at a mark, degC, likewise; null also where no peaks are known there. */
export const peakAt = ({ points }: DialChart, mark: number): number | null =>
  valueOf(
    curveOf(points, (p) => p.peakC),
    mark,
  );

/** Two neighbouring marks of which the higher is the colder, by so many K. */
export interface Falling {
  readonly fromMark: number;
  readonly toMark: number;
  readonly byK: number;
}

/** Less than this may be chance, K (our own choice: what room and setting of a dial do to a mean). */
const FALLS_K = 3;

/** Where the chart falls: a mark told wrong, or a dial read backwards. Null where it rises as a dial does. */
export function fallingIn({ points }: DialChart): Falling | null {
  for (const [i, to] of points.entries()) {
    const from = points[i - 1];
    if (from !== undefined && from.meanC - to.meanC > FALLS_K)
      return { fromMark: from.mark, toMark: to.mark, byK: from.meanC - to.meanC };
  }
  return null;
}
