import { z } from 'zod';
import {
  type ChartPoint,
  chartPointSchema,
  type DialChart,
  dialChartSchema,
  emptyChart,
  madeWithSchema,
  withPoint,
} from './chart.ts';
import { type DrawnStretch, drawnStretchSchema } from './drawing.ts';
import { type Drift, driftOf } from './drift.ts';
import { dialMarkSchema, isSameMark } from './mark.ts';

/**
 * What is kept of an iron's dial: its chart, and what was measured since that chart was settled. A mark that the chart
 * doesn't have becomes a point of it; at marks that it has, what is measured later is only held against it, so that a
 * drift shows, until the user accepts that as the new chart.
 */

const spread = z.number().min(0).nullable();

/** The figures of a stretch on the rest; `DialFigures` says what each is. */
export const dialFiguresSchema = z.strictObject({
  cycles: z.number().int().min(1),
  meanC: z.number(),
  peakC: z.number(),
  troughC: z.number(),
  highestPeakC: z.number(),
  fluctuationK: z.number(),
  periodS: z.number(),
  duty: z.number(),
  peakSpreadK: spread,
  meanSpreadK: spread,
  fluctuationSpreadK: spread,
  periodSpreadS: spread,
  heatingUpS: z.number().nullable(),
  heatingUpFromC: z.number().nullable(),
  heatingUpExcessK: z.number().nullable(),
});

/** How far a spell of work drew the plate down against the rest at the same mark; `LoadFound` says what each is. */
export const dialLoadSchema = z.strictObject({
  mark: dialMarkSchema,
  meanDropK: z.number().nullable(),
  troughDropK: z.number(),
  cycles: z.number().int().min(0),
});

const at = z.iso.datetime({ offset: true });
export const lastStretchSchema = z.strictObject({
  mark: dialMarkSchema,
  at,
  figures: dialFiguresSchema,
  madeWith: madeWithSchema.nullable().default(null),
});
export const lastLoadSchema = dialLoadSchema.safeExtend({ at });

/** How the iron last came up from cold, at a mark that was told by its first peak; `DialFigures` says what each is. */
export const lastWarmUpSchema = z.strictObject({
  mark: dialMarkSchema,
  at,
  heatingUpS: z.number(),
  heatingUpFromC: z.number(),
  heatingUpExcessK: z.number(),
  madeWith: madeWithSchema.nullable(),
});

/** More would only make the settings large; a drift is found in far fewer. */
const KEEP_SINCE = 60;
/** Stretches to be drawn, one a mark: each is as large as six points. */
const KEEP_DRAWN = 12;

export const keptDialSchema = z.strictObject({
  /** Id of the iron; one of the same id that is simulated is another iron. */
  iron: z.string().min(1).max(64),
  simulated: z.boolean(),
  chart: dialChartSchema,
  /** Measured at charted marks since the chart was settled, oldest first. */
  since: z.array(chartPointSchema).max(KEEP_SINCE),
  last: lastStretchSchema.nullable(),
  load: lastLoadSchema.nullable(),
  /** What was kept before it was has none. */
  warmUp: lastWarmUpSchema.nullable().default(null),
  /** The step of the probe's numbers when it was last measured, K. */
  resolutionK: z.number().min(0),
  /** The cycles at each mark, to be drawn; what was kept before they were has none. */
  drawn: z.array(drawnStretchSchema).max(KEEP_DRAWN).default([]),
});

export type LastStretch = z.infer<typeof lastStretchSchema>;
export type LastLoad = z.infer<typeof lastLoadSchema>;
export type LastWarmUp = z.infer<typeof lastWarmUpSchema>;

export interface KeptDial {
  readonly iron: string;
  readonly simulated: boolean;
  readonly chart: DialChart;
  readonly since: readonly ChartPoint[];
  readonly last: LastStretch | null;
  readonly load: LastLoad | null;
  readonly warmUp: LastWarmUp | null;
  readonly resolutionK: number;
  readonly drawn: readonly DrawnStretch[];
}

export const noDial = (iron: { readonly id: string; readonly simulated: boolean }): KeptDial => ({
  iron: iron.id,
  simulated: iron.simulated,
  chart: emptyChart,
  since: [],
  last: null,
  load: null,
  warmUp: null,
  resolutionK: 0,
  drawn: [],
});

export const driftOfKept = ({ since, chart, resolutionK }: KeptDial): Drift | null =>
  driftOf(since, chart, resolutionK);

const isAt = (mark: number) => (p: ChartPoint) => isSameMark(p.mark, mark);

/** The same stretch, told again as it goes on: it began at the same moment, at the same mark. */
const isSame = (a: ChartPoint) => (b: ChartPoint) => a.kind === b.kind && a.at === b.at && isAt(a.mark)(b);

/** Takes in what a stretch has given; `point.at` is when it began, so that it replaces what it told before. */
export function withMeasured(kept: KeptDial, point: ChartPoint): KeptDial {
  const { chart, since } = kept;
  const same = isSame(point);
  // The user has taken it out: as it goes on, it stays out.
  if (chart.earlier.some(same)) return kept;
  if (chart.points.some(same))
    return { ...kept, chart: { ...chart, points: chart.points.map((p) => (same(p) ? point : p)) } };
  const charted = chart.points.find(isAt(point.mark));
  // What a probe measured over whole cycles says more than what was typed.
  if (charted === undefined || charted.kind === 'typed') return { ...kept, chart: withPoint(chart, point) };
  const told = since.some(same);
  const after = told ? since.map((p) => (same(p) ? point : p)) : [...since, point].slice(-KEEP_SINCE);
  return { ...kept, since: after };
}

/** Takes in what a stretch tells of how the iron came up; one that began warm tells nothing, and the last stands. */
export function withWarmUp(kept: KeptDial, { mark, at, figures, madeWith }: LastStretch): KeptDial {
  const { heatingUpS, heatingUpFromC, heatingUpExcessK } = figures;
  if (heatingUpS === null || heatingUpFromC === null || heatingUpExcessK === null) return kept;
  return { ...kept, warmUp: { mark, at, heatingUpS, heatingUpFromC, heatingUpExcessK, madeWith } };
}

/** Takes in the cycles of a stretch; they stand for their mark until the next. */
export const withDrawn = (kept: KeptDial, stretch: DrawnStretch): KeptDial => ({
  ...kept,
  drawn: [...kept.drawn.filter(({ mark }) => mark !== stretch.mark), stretch].slice(-KEEP_DRAWN),
});

/** Takes in what was read from a hand thermometer; null where a probe has measured that mark. */
export function withTyped(kept: KeptDial, point: ChartPoint): KeptDial | null {
  const charted = kept.chart.points.find(isAt(point.mark));
  if (charted?.kind === 'measured') return null;
  return { ...kept, chart: withPoint(kept.chart, point) };
}

/** Takes a wrong point out; it and what was measured at its mark since are kept as earlier. Null: no such point. */
export function withoutMark(kept: KeptDial, mark: number): KeptDial | null {
  const here = isAt(mark);
  if (!kept.chart.points.some(here)) return null;
  const gone = [...kept.chart.points, ...kept.since].filter(here);
  return {
    ...kept,
    chart: putAside(kept.chart, gone),
    since: kept.since.filter((p) => !here(p)),
    drawn: kept.drawn.filter((d) => typeof d.mark !== 'number' || !isSameMark(d.mark, mark)),
  };
}

const putAside = (chart: DialChart, gone: readonly ChartPoint[]): DialChart => ({
  points: chart.points.filter((p) => !gone.includes(p)),
  earlier: [...chart.earlier, ...gone].slice(-100),
});

/**
 * Makes what was measured since the drift began the new chart: the last at each mark counts. Marks that were not
 * measured since are taken out, for they are no longer true. Null where nothing has drifted.
 */
export function accepted(kept: KeptDial): KeptDial | null {
  const drift = driftOfKept(kept);
  if (drift === null) return null;
  const from = kept.since.findIndex((p) => p.at === drift.sinceAt);
  const fresh = kept.since.slice(Math.max(0, from));
  const chart = fresh.reduce(withPoint, putAside(kept.chart, kept.chart.points));
  return { ...kept, chart, since: [] };
}
