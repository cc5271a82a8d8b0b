import { type ChartPoint, type DialChart, meanAt } from './chart.ts';
import { addToCusum, type Cusum, type CusumSide, noCusum } from './control-chart.ts';

/**
 * Whether an iron's thermostat has drifted from its chart. The tabular CUSUM is used of the two control charts, since it
 * tells by itself since when and by how much; the EWMA tells only that. With a slack of half a standard deviation and a
 * decision interval of five, a shift of one is found after about 10 stretches, of three after 3, and a false one comes
 * once in some 465 (from memory: Montgomery, Introduction to Statistical Quality Control).
 */
export interface Drift {
  /** The first stretch that took part in it. */
  readonly sinceAt: string;
  /** How far the plate's mean has gone from the chart, K: above 0 hotter, below 0 colder. */
  readonly byK: number;
  /** How many stretches that rests on. */
  readonly stretches: number;
  /** The standard deviation that it was held against, K, and where it comes from. */
  readonly sigmaK: number;
  readonly sigmaFrom: 'chart' | 'floor';
}

const SLACK_SIGMAS = 0.5;
const DECISION_SIGMAS = 5;
/**
 * No stretch repeats another better than this, K (our own choice): a dial that is set by eye, and another room. What a
 * chart's own cycles scatter by doesn't hold that.
 */
const LEAST_SIGMA_K = 1.5;
/** So many stretches in a row within the slack end a drift: what made it is gone (our own choice). */
const BACK_STRETCHES = 2;

interface Followed {
  readonly cusum: Cusum;
  readonly inRow: number;
  /** The stretches since each side's sum began. */
  readonly offs: readonly { readonly at: string; readonly offK: number }[];
}

/**
 * Compares stretches with the chart that the iron is held against.
 * @param history what was measured since that chart was settled, oldest first; marks outside the chart say nothing
 * @param resolutionK the step of the probe's numbers, K
 * @returns the drift that stands after the last of them; null where there is none
 */
export function driftOf(history: readonly ChartPoint[], chart: DialChart, resolutionK: number): Drift | null {
  const { sigmaK, sigmaFrom } = sigmaOf(chart, resolutionK);
  let followed: Followed = { cusum: noCusum, inRow: 0, offs: [] };
  for (const { at, mark, meanC } of history) {
    const expectedC = meanAt(chart, mark);
    if (expectedC !== null) followed = follow(followed, { at, offK: meanC - expectedC }, sigmaK);
  }
  const { cusum, offs } = followed;
  const side = cusum.above.sum >= cusum.below.sum ? cusum.above : cusum.below;
  const run = offs.slice(offs.length - side.run);
  const [first] = run;
  if (side.sum <= DECISION_SIGMAS * sigmaK || first === undefined) return null;
  const byK = (SLACK_SIGMAS * sigmaK + side.sum / side.run) * (side === cusum.above ? 1 : -1);
  return { sinceAt: first.at, byK, stretches: side.run, sigmaK, sigmaFrom };
}

function follow({ cusum, inRow, offs }: Followed, off: Followed['offs'][number], sigmaK: number): Followed {
  const slackK = SLACK_SIGMAS * sigmaK;
  const row = Math.abs(off.offK) <= slackK ? inRow + 1 : 0;
  if (row >= BACK_STRETCHES) return { cusum: noCusum, inRow: row, offs: [] };
  const after = addToCusum(cusum, off.offK, slackK);
  return { cusum: after, inRow: row, offs: [...offs, off].slice(-longest(after.above, after.below)) };
}

/** At least one is kept: a slice from -0 would keep all. */
const longest = (a: CusumSide, b: CusumSide): number => Math.max(1, a.run, b.run);

/** The scatter of the chart's own cycles, pooled over its points; no less than what a stretch can be repeated to. */
function sigmaOf({ points }: DialChart, resolutionK: number): Pick<Drift, 'sigmaK' | 'sigmaFrom'> {
  const squares = points.flatMap((p) => (p.meanSpreadK === null ? [] : [p.meanSpreadK ** 2]));
  const pooledK =
    squares.length === 0 ? 0 : Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  const floorK = Math.max(LEAST_SIGMA_K, resolutionK);
  return pooledK > floorK ? { sigmaK: pooledK, sigmaFrom: 'chart' } : { sigmaK: floorK, sigmaFrom: 'floor' };
}

/** A drift in few letters, for the detail of its alarm: by how many K, and since when. */
export const driftDetail = ({ byK, sinceAt }: Pick<Drift, 'byK' | 'sinceAt'>): string =>
  `${byK.toFixed(1)} K since ${sinceAt}`;

/** Reads such a detail; null where it is none. */
export function readDriftDetail(detail: string): Pick<Drift, 'byK' | 'sinceAt'> | null {
  const [, byK, sinceAt] = /^(-?\d+\.\d) K since (\S+)$/.exec(detail) ?? [];
  return byK === undefined || sinceAt === undefined ? null : { byK: Number(byK), sinceAt };
}
