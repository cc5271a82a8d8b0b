import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DryObservation, learn, nextFactor, usualBelief } from '../../../shared/cure/learn.ts';
import { between, observations } from './arbitraries.ts';

const numRuns = 100;
const DAY_MS = 86_400_000;

/** A coat a day that dried at this part of the time, give or take `width` of its logarithm, at so many stages. */
const days = (lns: readonly number[], width: number, stages = 1): readonly DryObservation[] =>
  lns.map((ln, i) => ({
    fromUtcMs: i * DAY_MS,
    stages: Array.from({ length: stages }, (_, k) => ({
      aboveS: 3600 * (k + 1) * Math.exp(ln - width),
      belowS: 3600 * (k + 1) * Math.exp(ln + width),
      stageS: 3600 * (k + 1),
    })),
  }));

describe('what is learned', () => {
  it('is a number in bounds, with its range around it, whatever was seen', () => {
    fc.assert(
      fc.property(observations, between(0, 1e6), (seen, above) => {
        const { learned, next } = learn(seen);
        expect(learned.low).toBeGreaterThan(0.2);
        expect(learned.low).toBeLessThan(learned.factor);
        expect(learned.factor).toBeLessThan(learned.high);
        expect(learned.high).toBeLessThan(4.6);
        const quantiles = [0.1, 0.5, 0.9].map((p) => nextFactor(next, p, above));
        expect(quantiles).toEqual([...quantiles].sort((a, b) => a - b));
        for (const factor of quantiles) {
          expect(Number.isFinite(factor)).toBe(true);
          expect(factor).toBeGreaterThanOrEqual(above);
        }
      }),
      { numRuns },
    );
  });

  it.each([
    // The farther an odd coat is off, the less it counts, so that only of coats near each other more is always more.
    ['of coats near each other', usualBelief, 0.12, 0.05],
    // Without odd ones all densities are log-concave: more is more however far coats lie apart.
    ['where no coat is ever odd', { ...usualBelief, odd: 0 }, 0.3, 0.1],
  ])('rises with each time that rises, %s', (_, belief, spreadLn, mostLn) => {
    const ln = between(-spreadLn, spreadLn);
    fc.assert(
      fc.property(
        fc.array(ln, { minLength: 1, maxLength: 6 }),
        between(0.01, 0.3),
        between(0.005, mostLn),
        (lns, width, more) => {
          const [first = 0, ...others] = lns;
          const before = learn(days(lns, width), belief).learned;
          const after = learn(days([first + more, ...others], width), belief).learned;
          expect(after.factor).toBeGreaterThanOrEqual(before.factor - 1e-9);
        },
      ),
      { numRuns },
    );
  });

  it('doesn’t depend on the order in which it was told, and lies between the instructions and what was seen', () => {
    const ln = between(0.05, 0.5);
    fc.assert(
      fc.property(fc.array(ln, { minLength: 1, maxLength: 6 }), (lns) => {
        const seen = days(lns, 0.02);
        const { learned } = learn(seen);
        expect(learn(seen.toReversed()).learned).toEqual(learned);
        expect(learned.factor).toBeGreaterThan(1);
        expect(learned.factor).toBeLessThan(Math.exp(Math.max(...lns)));
      }),
      { numRuns },
    );
  });

  it('of a coat that is touched at more stages is more, but never as much as of another coat beside it', () => {
    fc.assert(
      fc.property(
        between(0.05, 0.5),
        between(0.005, 0.1),
        fc.integer({ min: 2, max: 4 }),
        (ln, width, stages) => {
          const factorOf = (seen: readonly DryObservation[]): number => learn(seen).learned.factor;
          const one = factorOf(days([ln], width));
          const throughout = factorOf(days([ln], width, stages));
          const two = factorOf([...days([ln], width), ...days([ln], width)]);
          expect(throughout).toBeGreaterThan(one);
          expect(throughout).toBeLessThan(two);
        },
      ),
      { numRuns },
    );
  });

  it('comes nearer to what is seen again and again, and is surer of it', () => {
    fc.assert(
      fc.property(between(-0.5, 0.5), fc.integer({ min: 1, max: 10 }), (ln, n) => {
        const [some, more] = [n, 3 * n].map(
          (count) => learn(days(Array<number>(count).fill(ln), 0.02)).learned,
        );
        if (some === undefined || more === undefined) return expect.unreachable();
        const off = (factor: number): number => Math.abs(Math.log(factor) - ln);
        // Between its points the grid gives a factor to some 2e-5.
        expect(off(more.factor)).toBeLessThanOrEqual(off(some.factor) + 5e-5);
        expect(Math.log(more.high / more.low)).toBeLessThan(Math.log(some.high / some.low));
      }),
      { numRuns },
    );
  });
});
