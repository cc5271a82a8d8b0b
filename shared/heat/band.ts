import type { Cycle } from '../iron/cycle.ts';
import type { HeatStage } from './schedule.ts';

/**
 * Whether the plate keeps to its stage, judged over whole thermostat cycles, since a thermostat swings by more than a
 * stage is wide. Where the plate is held without a swing, it is judged over stretches of time.
 */
export interface BandWatch {
  /** The stage that it is held against; null: none. */
  readonly stage: Stage | null;
  /** Only what came after this counts: the stage was chosen. */
  readonly fromMs: number;
  /** When the work was last taken up after a long rest: a cycle must end after that to count for the work. */
  readonly resumedMs: number;
  readonly stretch: Stretch | null;
  /** Since when the plate has been on its rest, or not regulated; null while it is judged. */
  readonly pausedSinceMs: number | null;
  readonly seen: BandSeen;
}

type Stage = Pick<HeatStage, 'lowC' | 'highC'>;

export type BandSeen =
  | { readonly kind: 'not-judged' }
  /** Not yet long enough to tell. */
  | { readonly kind: 'undecided' }
  /** By how much the plate was over and under its stage, K; negative: it was not. */
  | { readonly kind: 'judged'; readonly aboveByK: number; readonly belowByK: number };

interface Stretch {
  readonly fromMs: number;
  readonly lowestC: number;
  readonly highestC: number;
}

/** Nothing is judged over less than this, ms; several short cycles count together until they span it. */
const LEAST_MS = 120_000;
/** After a rest of this length the cycles of the rest alone don't speak for the work, ms. */
const LONG_REST_MS = 180_000;
/** A plate that has not been regulated for so long is judged no more, ms: more than most thermostats take to turn. */
const UNSETTLED_MS = 300_000;
/** A plate that stays within this over a stretch is held without a swing, K; more is a plate on its way. */
const HELD_RANGE_K = 6;

const notJudged: BandSeen = { kind: 'not-judged' };
const undecided: BandSeen = { kind: 'undecided' };

/** Nothing is known yet of how the plate keeps to `stage`. */
export const startBand = (stage: BandWatch['stage'], tMs: number): BandWatch => ({
  stage: stage === null ? null : { lowC: stage.lowC, highC: stage.highC },
  fromMs: tMs,
  resumedMs: tMs,
  stretch: null,
  pausedSinceMs: null,
  seen: notJudged,
});

/** The same, where it has to be found out whether what stood before still holds. */
export const doubtfulBand = (stage: BandWatch['stage'], tMs: number): BandWatch => ({
  ...startBand(stage, tMs),
  seen: undecided,
});

export const sameStage = (a: BandWatch['stage'], b: BandWatch['stage']): boolean =>
  a === b || (a !== null && b !== null && a.lowC === b.lowC && a.highC === b.highC);

/**
 * The plate is on its rest, or not regulated. What was seen stands over a rest, however long: the dial has not been
 * turned, and one cause must not be told twice. A plate that is brought up or let down leaves it behind.
 */
export function pauseBand(before: BandWatch, tMs: number, regulated: boolean): BandWatch {
  const pausedSinceMs = before.pausedSinceMs ?? tMs;
  if (!regulated && tMs - pausedSinceMs > UNSETTLED_MS)
    return { ...startBand(before.stage, tMs), pausedSinceMs };
  return { ...before, stretch: null, pausedSinceMs };
}

/** Takes one more reading of a regulated plate at work, with the cycles known since it began to be regulated. */
export function judgeBand(
  before: BandWatch,
  reading: { readonly tMs: number; readonly plateC: number },
  cycles: readonly Cycle[],
): BandWatch {
  const { stage } = before;
  if (stage === null) return before;
  const band = takenUp(before, stage, reading.tMs);
  const last = cycles.at(-1);
  if (last !== undefined && isRecent(last, reading.tMs)) {
    const counts = last.toMs >= band.resumedMs;
    const meanC = counts ? meanOver(cycles.filter((c) => c.fromMs >= band.fromMs)) : null;
    const seen = meanC === null ? band.seen : judged(meanC, meanC, stage);
    return { ...band, seen, stretch: null, pausedSinceMs: null };
  }
  const stretch = extend(band.stretch, reading);
  if (reading.tMs - stretch.fromMs < LEAST_MS) return { ...band, stretch, pausedSinceMs: null };
  const held = stretch.highestC - stretch.lowestC <= HELD_RANGE_K;
  const seen = held ? judged(stretch.lowestC, stretch.highestC, stage) : band.seen;
  return { ...band, seen, stretch: null, pausedSinceMs: null };
}

function takenUp(before: BandWatch, stage: Stage, tMs: number): BandWatch {
  if (before.seen.kind === 'not-judged') return doubtfulBand(stage, tMs);
  const long = before.pausedSinceMs !== null && tMs - before.pausedSinceMs > LONG_REST_MS;
  return long ? { ...before, resumedMs: tMs } : before;
}

/** The thermostat may be in the cycle after this one still. */
const isRecent = ({ fromMs, toMs }: Cycle, tMs: number): boolean =>
  tMs - toMs < Math.max(LEAST_MS, 2 * (toMs - fromMs));

/** Mean over the newest cycles that span long enough, and no less than the longest one; null while they don't. */
function meanOver(cycles: readonly Cycle[]): number | null {
  const leastMs = Math.max(LEAST_MS, ...cycles.map((c) => c.toMs - c.fromMs));
  let spanMs = 0;
  let sum = 0;
  for (const { fromMs, toMs, meanC } of cycles.toReversed()) {
    spanMs += toMs - fromMs;
    sum += meanC * (toMs - fromMs);
    if (spanMs >= leastMs) return sum / spanMs;
  }
  return null;
}

function extend(
  stretch: Stretch | null,
  { tMs, plateC }: { readonly tMs: number; readonly plateC: number },
): Stretch {
  if (stretch === null) return { fromMs: tMs, lowestC: plateC, highestC: plateC };
  return {
    ...stretch,
    lowestC: Math.min(stretch.lowestC, plateC),
    highestC: Math.max(stretch.highestC, plateC),
  };
}

const judged = (lowestC: number, highestC: number, { lowC, highC }: Stage): BandSeen => ({
  kind: 'judged',
  aboveByK: lowestC - highC,
  belowByK: lowC - highestC,
});
