import type { AirSegment } from './course.ts';
import type { RangeWhy } from './range.ts';
import { type DriesBy, dryingGoesByHumidity, dryingPace, type Pace } from './rate.ts';

/** How far a cement dries over a course of the air: worked out once, and asked by all coats of it. */

interface CuringStep {
  readonly fromMs: number;
  readonly toMs: number;
  readonly pace: Pace;
  /** What has passed since the first step, in ms at the instructions' conditions. */
  readonly before: Pace;
  readonly whys: readonly RangeWhy[];
}

export interface Curing {
  /** In the order of time, without gaps. */
  readonly steps: readonly CuringStep[];
  /** Before the first step nothing is known of the air. */
  readonly untold: Pace;
}

/** How far it has come, s at the instructions' conditions: at the least, most likely, and at the most. */
export interface Cured {
  readonly leastS: number;
  readonly likelyS: number;
  readonly mostS: number;
}

const NONE: Pace = { least: 0, likely: 0, most: 0 };
const NO_DOUBT = { airK: 0, rhPct: 0 };

/** @param course segments without gaps, at least one */
export function curingOf(cement: DriesBy, course: readonly AirSegment[]): Curing {
  let before = NONE;
  const steps = course.map(({ fromMs, toMs, air, doubt, why }): CuringStep => {
    const pace = dryingPace(cement, air, doubt);
    const whys: RangeWhy[] = why === null ? [] : [why];
    if (air?.rhPct === null && dryingGoesByHumidity(cement)) whys.push('no-humidity');
    const step = { fromMs, toMs, pace, before, whys };
    before = after(step, toMs);
    return step;
  });
  return { steps, untold: dryingPace(cement, null, NO_DOUBT) };
}

function after({ fromMs, pace, before }: Pick<CuringStep, 'fromMs' | 'pace' | 'before'>, atMs: number): Pace {
  const ms = atMs - fromMs;
  return {
    least: before.least + ms * pace.least,
    likely: before.likely + ms * pace.likely,
    most: before.most + ms * pace.most,
  };
}

/** How far a coat comes from one moment to another; beyond what is foreseen of the air nothing is added. */
export function cured(curing: Curing, fromMs: number, toMs: number): Cured {
  if (toMs <= fromMs) return { leastS: 0, likelyS: 0, mostS: 0 };
  const [from, to] = [passed(curing, fromMs), passed(curing, toMs)];
  return {
    leastS: (to.least - from.least) / 1000,
    likelyS: (to.likely - from.likely) / 1000,
    mostS: (to.most - from.most) / 1000,
  };
}

/** The rates at a moment. */
export const paceAt = ({ steps, untold }: Curing, atMs: number): Pace =>
  steps[lastFrom(steps, atMs)]?.pace ?? untold;

/**
 * By how much of the time each reason widens a coat's range from one moment to another, to either side.
 * @param nowMs what is told of the air now is no old air yet for being taken as air of later
 */
export function doubtsOf(
  { steps, untold }: Curing,
  fromMs: number,
  toMs: number,
  nowMs: number,
): ReadonlyMap<RangeWhy, number> {
  const doubts = new Map<RangeWhy, number>();
  let likely = 0;
  const add = (spanMs: number, pace: Pace, whys: readonly RangeWhy[]): void => {
    likely += spanMs * pace.likely;
    for (const why of whys) doubts.set(why, (doubts.get(why) ?? 0) + (spanMs * (pace.most - pace.least)) / 2);
  };
  const isOldNow = steps[lastFrom(steps, nowMs)]?.whys.includes('old-air') ?? false;
  const firstMs = steps[0]?.fromMs ?? toMs;
  if (fromMs < firstMs) add(Math.min(firstMs, toMs) - fromMs, untold, ['no-air']);
  for (let i = Math.max(0, lastFrom(steps, fromMs)); i < steps.length; i += 1) {
    const step = steps[i];
    if (step === undefined || step.fromMs >= toMs) break;
    const [startMs, endMs] = [Math.max(step.fromMs, fromMs), Math.min(step.toMs, toMs)];
    const pastMs = Math.min(Math.max(nowMs, startMs), endMs);
    add(pastMs - startMs, step.pace, step.whys);
    add(endMs - pastMs, step.pace, isOldNow ? step.whys : step.whys.map(ahead));
  }
  return new Map([...doubts].map(([why, ms]) => [why, ms / likely]));
}

const ahead = (why: RangeWhy): RangeWhy => (why === 'old-air' ? 'air-ahead' : why);

/** When a coat has come so far, s at the instructions' conditions, by one of the rates; null: not as far as can be seen. */
export function reachedMs(curing: Curing, fromMs: number, neededS: number, by: keyof Pace): number | null {
  const { steps, untold } = curing;
  const target = passed(curing, fromMs)[by] + neededS * 1000;
  const [first] = steps;
  if (first === undefined) return null;
  if (target <= 0) return Math.round(first.fromMs + target / untold[by]);
  const step = steps[firstThat(steps, (candidate) => after(candidate, candidate.toMs)[by] >= target)];
  if (step === undefined) return null;
  return Math.round(step.fromMs + (target - step.before[by]) / step.pace[by]);
}

function passed({ steps, untold }: Curing, atMs: number): Pace {
  const [first] = steps;
  if (first === undefined) return NONE;
  const step = steps[lastFrom(steps, atMs)] ?? { ...first, pace: untold };
  return after(step, Math.min(atMs, step.toMs));
}

/** The last step that has begun by then, -1 where none has. */
const lastFrom = (steps: readonly CuringStep[], atMs: number): number =>
  firstThat(steps, ({ fromMs }) => fromMs > atMs) - 1;

/** The first of those that come after the ones that it isn't true of. */
function firstThat(steps: readonly CuringStep[], isTrue: (step: CuringStep) => boolean): number {
  let [low, high] = [0, steps.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const step = steps[middle];
    if (step !== undefined && isTrue(step)) high = middle;
    else low = middle + 1;
  }
  return low;
}
