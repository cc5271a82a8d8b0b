import { z } from 'zod';

/**
 * The check that must be done once before still and moving are told apart: the iron stands still for a while, then it is
 * moved, and what the line says of both is held side by side. What a sensor calls still depends on where it sits.
 */
export const motionCheckSchema = z
  .strictObject({
    /** At most so much is still, at least so much is moving; what is between stays what it was, g. */
    stillG: z.number().positive(),
    movingG: z.number().positive(),
    checkedAt: z.iso.datetime({ offset: true }),
  })
  .refine((c) => c.stillG < c.movingG, { message: 'must be above what is still', path: ['movingG'] })
  .readonly();
export type MotionCheck = z.infer<typeof motionCheckSchema>;

/** What is still and what is moving on one line, g. */
export type MotionLevels = Pick<MotionCheck, 'stillG' | 'movingG'>;

/**
 * - `no-value`: the line carried no motion value
 * - `too-seldom`: it carried too few to follow a hand by
 * - `gravity`: the value at rest is about that of gravity itself, which must be taken out
 * - `not-still`: it was moved, or shaken, while it was to stand still
 * - `no-difference`: moved and still look too much alike
 */
export const motionRefusals = ['no-value', 'too-seldom', 'gravity', 'not-still', 'no-difference'] as const;
export type MotionRefusal = (typeof motionRefusals)[number];

export type MotionJudged =
  | { readonly kind: 'found'; readonly levels: MotionLevels }
  | { readonly kind: 'refused'; readonly reason: MotionRefusal };

/** All of these are our own choices. Fewer values than this in each span of 5 s can't follow a hand. */
const LEAST_VALUES = 4;
/** A value at rest from here on is gravity's, or near it, g. */
const GRAVITY_G = 0.5;
/** An iron that stands still shows less than this whatever its sensor, g. */
const STANDS_UNDER_G = 0.1;
/** The usual value while moved must be so many times what it is while still. */
const LEAST_RATIO = 4;
/** Below this a line that writes thousandths tells nothing, g. */
const LEAST_G = 0.001;

/**
 * The levels that follow from what was read, g, in a span of 5 s at rest and one of 5 s moved: between the nearly highest
 * at rest and the middle one moved, they cut the way into three equal ratios, so that neither a knock at rest nor the
 * quiet middle of a stroke is taken for the other.
 */
export function judgeMotion(still: readonly number[], moved: readonly number[]): MotionJudged {
  if (still.length === 0 || moved.length === 0) return refuse('no-value');
  if (still.length < LEAST_VALUES || moved.length < LEAST_VALUES) return refuse('too-seldom');
  if (at(still, 0.5) >= GRAVITY_G) return refuse('gravity');
  const restG = Math.max(LEAST_G, at(still, 0.9));
  if (restG >= STANDS_UNDER_G) return refuse('not-still');
  const ratio = at(moved, 0.5) / restG;
  if (ratio < LEAST_RATIO) return refuse('no-difference');
  return {
    kind: 'found',
    levels: { stillG: restG * Math.cbrt(ratio), movingG: restG * Math.cbrt(ratio) ** 2 },
  };
}

const refuse = (reason: MotionRefusal): MotionJudged => ({ kind: 'refused', reason });

/** The value that this share of them doesn't pass. */
function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
}
