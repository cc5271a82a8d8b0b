import { describe, expect, it, test } from 'vitest';
import {
  type Belief,
  type DryObservation,
  learn,
  nextFactor,
  type StageObservation,
  usualBelief,
} from '../../../shared/cure/learn.ts';
import { normalBelow, normalBetween } from '../../../shared/cure/normal.ts';

/**
 * What is learned, against closed forms (mathematical): the posterior of a normal mean with a normal prior, as any textbook
 * of Bayesian statistics has it.
 */

const DAY_MS = 86_400_000;
const HOUR_S = 3600;
const Z90 = 1.2815515655446004;

/** No odd days and coats, so that everything is normally distributed. */
const plain: Belief = { ...usualBelief, odd: 0 };

const foundAt = (factor: number, stageS: number): StageObservation => ({
  aboveS: factor * stageS * (1 - 1e-5),
  belowS: factor * stageS * (1 + 1e-5),
  stageS,
});

/** A coat a day, found to dry at just this part of the instructions' time. */
const found = (factors: readonly number[], apartMs = DAY_MS): readonly DryObservation[] =>
  factors.map((factor, i) => ({ fromUtcMs: i * apartMs, stages: [foundAt(factor, HOUR_S)] }));

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

describe('narrow intervals without odd ones come to the closed form', () => {
  const sets: readonly (readonly number[])[] = [
    [0.8],
    [1.3],
    [0.8, 0.8, 0.8],
    [0.7, 0.9, 0.75, 0.82, 0.78],
    [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
    [1.6, 1.9, 1.4],
  ];
  it.each(sets.map((set) => [set]))('one coat a day: %j', (factors) => {
    const scatter = plain.daySd ** 2 + plain.coatSd ** 2 + plain.stageSd ** 2;
    const precision = 1 / plain.cementSd ** 2 + factors.length / scatter;
    const middle = ((factors.length / scatter) * mean(factors.map(Math.log))) / precision;
    const { learned, next } = learn(found(factors), plain);
    expect(learned.factor.toFixed(3)).toBe(Math.exp(middle).toFixed(3));
    expect(learned.low.toFixed(3)).toBe(Math.exp(middle - Z90 * Math.sqrt(1 / precision)).toFixed(3));
    expect(learned.high.toFixed(3)).toBe(Math.exp(middle + Z90 * Math.sqrt(1 / precision)).toFixed(3));
    // The next coat: its own scatter beside what is not known of the cement.
    const nextSd = Math.sqrt(1 / precision + scatter);
    for (const [p, z] of [
      [0.1, -Z90],
      [0.5, 0],
      [0.9, Z90],
    ] as const)
      expect(nextFactor(next, p)).toBeCloseTo(Math.exp(middle + z * nextSd), 4);
  });

  test('coats of one day share what the day was off by', () => {
    const factors = [0.7, 0.9, 0.75, 0.82];
    const { learned } = learn(found(factors, HOUR_S * 1000), plain);
    const scatter = plain.daySd ** 2 + (plain.coatSd ** 2 + plain.stageSd ** 2) / factors.length;
    const precision = 1 / plain.cementSd ** 2 + 1 / scatter;
    const middle = mean(factors.map(Math.log)) / scatter / precision;
    expect(learned.factor).toBeCloseTo(Math.exp(middle), 4);
    expect(learned.low).toBeCloseTo(Math.exp(middle - Z90 / Math.sqrt(precision)), 4);
  });

  test('stages of one coat share what the day and the coat were off by', () => {
    const factors = [0.7, 0.9, 0.75, 0.82];
    const stages = factors.map((factor, i) => foundAt(factor, HOUR_S * (i + 1)));
    const { learned } = learn([{ fromUtcMs: 0, stages }], plain);
    const scatter = plain.daySd ** 2 + plain.coatSd ** 2 + plain.stageSd ** 2 / factors.length;
    const precision = 1 / plain.cementSd ** 2 + 1 / scatter;
    const middle = mean(factors.map(Math.log)) / scatter / precision;
    expect(learned.observations).toBe(1);
    expect(learned.factor).toBeCloseTo(Math.exp(middle), 4);
    expect(learned.low).toBeCloseTo(Math.exp(middle - Z90 / Math.sqrt(precision)), 4);
    expect(learned.high).toBeCloseTo(Math.exp(middle + Z90 / Math.sqrt(precision)), 4);
  });

  test('known to be above its median, the next coat is where the cut normal distribution is', () => {
    const { next } = learn([], plain);
    const sd = Math.hypot(plain.cementSd, plain.daySd, plain.coatSd, plain.stageSd);
    // Of the upper half the middle is the three-quarter point: 0.674490 standard deviations (table of the normal).
    expect(nextFactor(next, 0.5, 1)).toBeCloseTo(Math.exp(0.67448975 * sd), 4);
  });
});

describe('the normal distribution', () => {
  it.each([
    [0, 0.5],
    // Quantiles as printed in tables; further digits from memory.
    [1.2815515655446004, 0.9],
    [1.6448536269514722, 0.95],
    [1.959963984540054, 0.975],
    [2.3263478740408408, 0.99],
    [3.090232306167813, 0.999],
  ])('below %d: %d', (z, p) => {
    expect(normalBelow(z)).toBeCloseTo(p, 14);
    expect(normalBelow(-z)).toBeCloseTo(1 - p, 14);
  });

  test('between any two agrees with Simpson’s rule over its density, also far out', () => {
    const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    for (let from = -8; from < 8; from += 0.37) {
      const [to, n] = [from + 0.3, 200];
      let sum = density(from) + density(to);
      for (let i = 1; i < n; i += 1) sum += (i % 2 === 0 ? 2 : 4) * density(from + (i * (to - from)) / n);
      const simpson = (sum * (to - from)) / (3 * n);
      expect(Math.abs(normalBetween(from, to) / simpson - 1)).toBeLessThan(1e-9);
    }
  });
});
