import { describe, expect, test } from 'vitest';
import {
  addToSlope,
  type SlopeState,
  STEADY_K_PER_S,
  slopeKPerS,
  trendOf,
} from '../../../shared/thermometer/slope.ts';
import { drawer } from '../watch/support/worked-iron.ts';

const follow = (points: readonly (readonly [atMs: number, plateC: number])[]): SlopeState | null => {
  let state: SlopeState | null = null;
  for (const [atMs, plateC] of points) state = addToSlope(state, atMs, plateC);
  return state;
};

const ramp = (kPerS: number, stepMs: number, count: number, noiseK = 0): (readonly [number, number])[] => {
  const draw = drawer(7);
  return Array.from({ length: count }, (_, i) => [
    i * stepMs,
    100 + (kPerS * i * stepMs) / 1000 + draw(-noiseK, noiseK),
  ]);
};

describe('slope of a straight rise', () => {
  test.each([
    [1, 100],
    [-0.4, 250],
    [0, 500],
    [2.5, 1000],
  ])('%d K/s at a reading every %d ms is found exactly', (kPerS, stepMs) => {
    expect(slopeKPerS(follow(ramp(kPerS, stepMs, 60)))).toBeCloseTo(kPerS, 6);
  });

  test('with noise of 0.5 K to either side, to 0.1 K/s', () => {
    const slope = slopeKPerS(follow(ramp(0.8, 100, 300, 0.5)));
    expect(Math.abs((slope ?? 0) - 0.8)).toBeLessThan(0.1);
  });

  test('after a turn the old slope is forgotten within a dozen seconds', () => {
    const up = ramp(1, 100, 600);
    const down = Array.from({ length: 120 }, (_, i) => [60_000 + i * 100, 160 - i * 0.03] as const);
    expect(slopeKPerS(follow([...up, ...down]))).toBeLessThan(0);
  });

  test('it does not depend on how long the history is, nor drift away with it', () => {
    expect(slopeKPerS(follow(ramp(0.001, 100, 100_000)))).toBeCloseTo(0.001, 9);
  });
});

describe('too little to tell', () => {
  test('nothing, one reading, many at one moment, a second of readings', () => {
    expect(slopeKPerS(null)).toBeNull();
    expect(slopeKPerS(follow([[0, 100]]))).toBeNull();
    expect(
      slopeKPerS(
        follow([
          [0, 100],
          [0, 101],
          [0, 102],
        ]),
      ),
    ).toBeNull();
    expect(slopeKPerS(follow(ramp(1, 100, 10)))).toBeNull();
    expect(slopeKPerS(follow(ramp(1, 100, 30)))).not.toBeNull();
  });
});

test('a reading that was placed a little before the last one spoils nothing', () => {
  const points = ramp(1, 100, 100).map(([atMs, c], i) => [i % 7 === 3 ? atMs - 130 : atMs, c] as const);
  expect(Math.abs((slopeKPerS(follow(points)) ?? 0) - 1)).toBeLessThan(0.05);
});

test('in words: steady under 0.05 K/s, else rising or falling', () => {
  expect(STEADY_K_PER_S).toBe(0.05);
  expect([null, 0.049, -0.049, 0.05, -0.05].map(trendOf)).toEqual([
    null,
    'steady',
    'steady',
    'rising',
    'falling',
  ]);
});
