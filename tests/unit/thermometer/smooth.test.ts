import { describe, expect, test } from 'vitest';
import { type Smooth, smooth } from '../../../shared/thermometer/smooth.ts';

function levels(values: readonly number[], stepMs = 100): number[] {
  let state: Smooth | null = null;
  return values.map((c, i) => {
    state = smooth(state, i * stepMs, c);
    return state.levelC;
  });
}

describe('smoothed temperature', () => {
  test('steady stays steady', () => {
    expect(levels([150, 150, 150, 150])).toEqual([150, 150, 150, 150]);
  });

  test('a single wild value is not seen at all, at any pace', () => {
    for (const stepMs of [100, 1000]) {
      const values = Array.from({ length: 20 }, (_, i) => (i === 10 ? 199 : 150));
      expect(Math.max(...levels(values, stepMs))).toBe(150);
    }
  });

  test('a step is reached to 63.2 % in a second and a reading (first-order lag: 1 - 1/e)', () => {
    const values = [100, 100, 100, ...Array.from({ length: 60 }, () => 200)];
    const after = levels(values);
    // The step becomes the middle one of three with its second reading: at 0.4 s; a second later is index 14.
    expect(after[3]).toBe(100);
    expect(after[13]).toBeCloseTo(100 + 100 * (1 - Math.exp(-1)), 6);
  });

  test('it keeps three readings at most', () => {
    let state: Smooth | null = null;
    for (let i = 0; i < 50; i++) state = smooth(state, i, i);
    expect(state?.recentC).toEqual([47, 48, 49]);
  });
});
