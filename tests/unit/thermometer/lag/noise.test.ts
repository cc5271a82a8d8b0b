import { describe, expect, test } from 'vitest';
import { gaussian } from '../../../../daemon/probe/simulated/random.ts';
import {
  learnNoise,
  type NoiseState,
  readingVarianceK2,
  startNoise,
} from '../../../../shared/thermometer/lag/noise.ts';

const nothingKnown = { noiseK: null, resolutionK: null };

function learned(plateC: (tS: number) => number, noiseK: number, stepK: number, periodMs = 250): NoiseState {
  let state: NoiseState | null = null;
  let seed = 3;
  for (let tMs = 0; tMs < 240_000; tMs += periodMs) {
    const noise = gaussian(seed);
    seed = noise.seed;
    const c = Math.round((plateC(tMs / 1000) + noiseK * noise.value) / stepK) * stepK;
    state = state === null ? startNoise(tMs, c) : learnNoise(state, tMs, c);
  }
  if (state === null) throw new Error('nothing learned');
  return state;
}

const cycling = (tS: number): number => 150 + 12 * Math.sin(tS / 12);

describe('what is learned of a probe', () => {
  test.each([0.02, 0.1, 0.4])('its noise of %d K, on a plate that cycles, within a third', (noiseK) => {
    const found = Math.sqrt(readingVarianceK2(learned(cycling, noiseK, 0.01), nothingKnown));
    expect(found).toBeGreaterThan(noiseK / 1.35);
    expect(found).toBeLessThan(noiseK * 1.35);
  });

  test('the step of its numbers', () => {
    expect(learned(cycling, 0.1, 0.25).stepK).toBeCloseTo(0.25, 9);
    expect(learned(cycling, 0.2, 1).stepK).toBeCloseTo(1, 9);
    expect(learned(() => 150, 0, 1).stepK).toBeNull();
  });

  test('a coarse probe that repeats itself is not taken for an exact one', () => {
    const state = learned((tS) => (tS < 10 ? 149 : 150), 0, 1);
    expect(readingVarianceK2(state, nothingKnown)).toBeCloseTo(1 / 12, 9);
  });

  test('what is told goes before what was learned: noise squared and a twelfth of the step squared', () => {
    const state = learned(cycling, 0.4, 0.01);
    expect(readingVarianceK2(state, { noiseK: 0.2, resolutionK: 0.5 })).toBeCloseTo(0.04 + 0.25 / 12, 9);
  });

  test('one wild value teaches it next to nothing', () => {
    const calm = learned(cycling, 0.1, 0.01);
    const wild = learnNoise(calm, 240_000, 400);
    const after = learnNoise(wild, 240_250, cycling(240.25));
    expect(after.varianceK2).toBeLessThan(1.3 * calm.varianceK2);
  });
});
