import type { DryingStage } from './cement.ts';
import { type Curing, doubtsOf } from './curing.ts';
import type { LearnedHere } from './learn.ts';
import { type RangeWhy, rangeWhys } from './range.ts';

/** Less than this much of the time to either side isn't worth a word. Our own choice. */
const WORTH_TELLING = 0.03;
/** From so many coats on this shop's own way of drying counts as learned. Our own choice. */
const COATS_THAT_TEACH = 3;

/** Why the range of the stage that a coat dries towards is as wide as it is, the most telling first. */
export function whyRange(
  {
    fromUtcMs,
    curing,
    learned: { learned },
    nowUtcMs,
    clockLost,
  }: {
    readonly fromUtcMs: number;
    readonly curing: Curing;
    readonly learned: LearnedHere;
    readonly nowUtcMs: number;
    readonly clockLost: boolean;
  },
  { fromS, toS }: DryingStage,
  { likelyMs, latestMs }: { readonly likelyMs: number | null; readonly latestMs: number | null },
): readonly RangeWhy[] {
  // All that comes until the latest time makes it as late as it is.
  const untilMs = Math.max(latestMs ?? likelyMs ?? nowUtcMs, fromUtcMs + 1);
  const doubts = doubtsOf(curing, fromUtcMs, untilMs, nowUtcMs);
  const width = (why: RangeWhy): number => {
    // By how much nobody can say.
    if (why === 'clock') return clockLost ? Number.POSITIVE_INFINITY : 0;
    if (why === 'instructions') return Math.log(toS / fromS) / 2;
    if (why === 'not-learned')
      return learned.observations < COATS_THAT_TEACH ? Math.log(learned.high / learned.low) / 2 : 0;
    return doubts.get(why) ?? 0;
  };
  const telling = rangeWhys
    .map((why) => ({ why, width: width(why) }))
    .filter((each) => each.width >= WORTH_TELLING)
    .sort((a, b) => b.width - a.width)
    .map(({ why }) => why);
  return telling.length > 0 ? telling : ['days-differ'];
}
