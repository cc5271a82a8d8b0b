import { describe, expect, test } from 'vitest';
import { jobOf, waysOver } from '../soak/where-next/study.ts';

/** A slice of what `npm run soak` measures over many pieces (`tests/soak/where-next.test.ts`). */
describe('a piece ironed as proposed', () => {
  test.each([1, 2, 3, 5, 8, 13])(
    'is never further apart than one ironed from end to end: seed %d',
    (seed) => {
      const [proposed, wilful, turning] = waysOver(jobOf(seed), seed);
      if (proposed === undefined || wilful === undefined || turning === undefined)
        return expect.unreachable();
      expect(proposed.visits).toBe(turning.visits);
      expect(proposed.worstSides).toBeLessThanOrEqual(1 + 1e-9);
      expect(proposed.worstEnds).toBeLessThanOrEqual(turning.worstEnds + 1e-9);
      expect(proposed.turns).toBeLessThan(turning.turns);
      // Who takes another choice one time in three is brought back.
      expect(wilful.worstSides).toBeLessThan(2);
    },
  );
});
