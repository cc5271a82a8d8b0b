import type { Cycle } from '../iron/cycle.ts';
import type { HeatStage } from './schedule.ts';

/**
 * Whether the plate keeps to its stage, judged over whole thermostat cycles, since a thermostat swings by more than a
 * stage is wide. Until a cycle is known, and where the plate is held without a swing, over stretches of time.
 */
export interface BandWatch {
  /** What is judged began here: the stage was chosen, or the plate began to be regulated. */
  readonly fromMs: number;
  readonly stretch: { readonly fromMs: number; readonly minC: number; readonly maxC: number } | null;
  readonly verdict: BandVerdict;
}

export type BandVerdict = 'not-judged' | 'undecided' | 'below' | 'within' | 'above';

/** Nothing is judged sooner than this, ms; several short cycles count together until they span it. */
const LEAST_MS = 120_000;

export const startBand = (tMs: number): BandWatch => ({ fromMs: tMs, stretch: null, verdict: 'undecided' });
export const idleBand: BandWatch = { fromMs: 0, stretch: null, verdict: 'not-judged' };

/** Takes one more reading, with the cycles known since the plate began to be regulated. */
export function judgeBand(
  before: BandWatch,
  reading: { readonly tMs: number; readonly plateC: number },
  cycles: readonly Cycle[],
  stage: HeatStage,
): BandWatch {
  const whole = cycles.filter((c) => c.fromMs >= before.fromMs);
  const stretch = extend(before.stretch, reading);
  const last = whole.at(-1);
  if (last !== undefined && reading.tMs - last.toMs < Math.max(LEAST_MS, 2 * (last.toMs - last.fromMs))) {
    const verdict = overCycles(whole, stage) ?? before.verdict;
    return {
      ...before,
      verdict,
      stretch: { fromMs: reading.tMs, minC: reading.plateC, maxC: reading.plateC },
    };
  }
  if (reading.tMs - stretch.fromMs < LEAST_MS) return { ...before, stretch };
  return { ...before, verdict: overStretch(stretch, stage), stretch: null };
}

function extend(
  stretch: BandWatch['stretch'],
  { tMs, plateC }: { readonly tMs: number; readonly plateC: number },
): NonNullable<BandWatch['stretch']> {
  if (stretch === null) return { fromMs: tMs, minC: plateC, maxC: plateC };
  return { ...stretch, minC: Math.min(stretch.minC, plateC), maxC: Math.max(stretch.maxC, plateC) };
}

/** Mean over the newest cycles that span long enough; null while they don't. */
function overCycles(cycles: readonly Cycle[], stage: HeatStage): BandVerdict | null {
  let spanMs = 0;
  let sum = 0;
  for (const cycle of cycles.toReversed()) {
    const ms = cycle.toMs - cycle.fromMs;
    spanMs += ms;
    sum += cycle.meanC * ms;
    if (spanMs >= LEAST_MS) return verdictOf(sum / spanMs, sum / spanMs, stage);
  }
  return null;
}

const overStretch = (s: NonNullable<BandWatch['stretch']>, stage: HeatStage): BandVerdict =>
  verdictOf(s.minC, s.maxC, stage);

function verdictOf(lowestC: number, highestC: number, stage: HeatStage): BandVerdict {
  if (lowestC > stage.highC) return 'above';
  return highestC < stage.lowC ? 'below' : 'within';
}
