import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeMotion } from '../../shared/iron/motion/check.ts';
import {
  MOTION_GAP_MS,
  MOVING_AFTER_MS,
  type Motion,
  noMotion,
  STILL_AFTER_MS,
  stepMotion,
} from '../../shared/iron/motion/motion.ts';

const check = { stillG: 0.02, movingG: 0.04 };
interface Value {
  readonly afterMs: number;
  readonly motionG: number | null;
}

const g = fc.oneof(fc.double({ min: 0, max: 2, noNaN: true }), fc.constantFrom(0, 0.02, 0.03, 0.04));
const values = fc.array(
  fc.record({ afterMs: fc.integer({ min: 1, max: 4000 }), motionG: fc.option(g, { freq: 8 }) }),
  { maxLength: 80 },
);

/** The motion after each value, with its time. */
function followed(course: readonly Value[]): readonly { readonly tMs: number; readonly motion: Motion }[] {
  let tMs = 0;
  let motion = noMotion;
  return course.map(({ afterMs, motionG }) => {
    tMs += afterMs;
    motion = stepMotion(motion, { tMs, motionG, check });
    return { tMs, motion };
  });
}

describe('still or moving', () => {
  it('is never still where a moving value came within its delay', () => {
    fc.assert(
      fc.property(values, (course) => {
        const all = followed(course);
        for (const [i, { tMs, motion }] of all.entries()) {
          // From being moving: what it was longer ago is over once it has been still.
          if (motion.is !== 'still' || all[i - 1]?.motion.is === 'still') continue;
          const moved = all.filter(
            (a, k) => k <= i && (course[k]?.motionG ?? 0) >= check.movingG && tMs - a.tMs < STILL_AFTER_MS,
          );
          expect(moved).toEqual([]);
        }
      }),
    );
  });

  it('is known only from values that came, and not longer than a gap', () => {
    fc.assert(
      fc.property(values, (course) => {
        for (const { tMs, motion } of followed(course)) {
          if (motion.is === 'unknown') continue;
          expect(tMs - (motion.heardMs ?? -Infinity)).toBeLessThanOrEqual(MOTION_GAP_MS);
          expect(motion.sinceMs ?? Infinity).toBeLessThanOrEqual(tMs);
        }
      }),
    );
  });

  it('tells a change of any history within its delay and two lines', () => {
    const period = fc.integer({ min: 20, max: 1200 });
    fc.assert(
      fc.property(values, period, fc.constantFrom('still', 'moving'), (course, periodMs, to) => {
        const start = followed(course).at(-1) ?? { tMs: 0, motion: noMotion };
        const delayMs = to === 'still' ? STILL_AFTER_MS : MOVING_AFTER_MS;
        let { motion } = start;
        for (let ms = periodMs; ms <= delayMs + 2 * periodMs; ms += periodMs)
          motion = stepMotion(motion, { tMs: start.tMs + ms, motionG: to === 'still' ? 0.01 : 0.1, check });
        expect(motion.is).toBe(to);
      }),
    );
  });

  it('goes on the same from a state that has been through JSON', () => {
    fc.assert(
      fc.property(values, values, (before, more) => {
        const whole = followed([...before, ...more]).at(-1);
        const half = followed(before).at(-1);
        let motion = half === undefined ? noMotion : (JSON.parse(JSON.stringify(half.motion)) as Motion);
        let tMs = half?.tMs ?? 0;
        for (const { afterMs, motionG } of more) {
          tMs += afterMs;
          motion = stepMotion(motion, { tMs, motionG, check });
        }
        expect(motion).toEqual(whole?.motion ?? noMotion);
      }),
    );
  });
});

describe('the levels of a check', () => {
  const many = fc.array(fc.double({ min: 0, max: 4, noNaN: true }), { maxLength: 40 });

  it('rise from the still to the moved, or are refused', () => {
    fc.assert(
      fc.property(many, many, (still, moved) => {
        const judged = judgeMotion(still, moved);
        if (judged.kind === 'refused') return;
        expect(judged.levels.stillG).toBeGreaterThan(0);
        expect(judged.levels.movingG).toBeGreaterThan(judged.levels.stillG);
        // Most of what was read at rest is still by them, and half of what was read moved is moving.
        expect(still.filter((v) => v <= judged.levels.stillG).length).toBeGreaterThanOrEqual(
          still.length / 2,
        );
        expect(moved.filter((v) => v >= judged.levels.movingG).length).toBeGreaterThanOrEqual(
          moved.length / 2,
        );
      }),
    );
  });
});
