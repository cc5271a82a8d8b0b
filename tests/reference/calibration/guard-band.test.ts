import { expect, it, test } from 'vitest';
import { confidences, guardBandK } from '../../../shared/thermometer/uncertainty.ts';

/** One-sided guard bands. The figures of JCGM 106:2012 are from memory; the integral needs no source. */

/** Probability of the standard normal distribution below z, by Simpson's rule from -12 on: 1e-12 and better. */
function probabilityBelow(z: number): number {
  const steps = 4000;
  const width = (z + 12) / steps;
  const density = (x: number): number => Math.exp(-(x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(-12) + density(z);
  for (let i = 1; i < steps; i += 1) sum += density(-12 + i * width) * (i % 2 === 1 ? 4 : 2);
  return (sum * width) / 3;
}

test.each(confidences)('%d: the normal density integrates to it up to the guard band', (confidence) => {
  expect(probabilityBelow(guardBandK(1, confidence))).toBeCloseTo(confidence, 11);
});

test.each([
  [0.8, '0.84'],
  [0.9, '1.28'],
  [0.95, '1.64'],
  [0.99, '2.33'],
] as const)('JCGM 106:2012, table 1 (from memory): %d is at z = %s', (confidence, z) => {
  expect(guardBandK(1, confidence).toFixed(2)).toBe(z);
});

it('agrees with the breakdown voltage of JCGM 106:2012 (from memory): -5.47 V, u 0.05 V, limit -5.40 V: 92 %', () => {
  const roomV = -5.4 - -5.47;
  expect(probabilityBelow(roomV / 0.05).toFixed(2)).toBe('0.92');
  // So it conforms at 90 % and not at 95 %.
  expect(roomV).toBeGreaterThan(guardBandK(0.05, 0.9));
  expect(roomV).toBeLessThan(guardBandK(0.05, 0.95));
});
