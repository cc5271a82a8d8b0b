import { describe, expect, it } from 'vitest';
import { motionOf } from '../../../daemon/probe/simulated/motion.ts';
import type { Conditions, Hand } from '../../../daemon/probe/simulated/scenario.ts';

type Doing = Pick<Conditions, 'place' | 'still'>;
const onWork: Doing = { place: 'on-work', still: false };
const hand: Hand = { strokeCm: 40, strokeS: 2, turnS: 0, glideG: 0.03 };

/** Values one after the other, each over its own span. */
function values(doing: Doing, spanS: number, count: number, by: Hand | null = hand): number[] {
  let seed = 7;
  return Array.from({ length: count }, (_, i) => {
    const drawn = motionOf(doing, by ?? undefined, { untilS: (i + 1) * spanS, spanS }, seed);
    seed = drawn.seed;
    return drawn.value;
  });
}
const mean = (of: readonly number[]): number => of.reduce((sum, v) => sum + v, 0) / of.length;
/** Standard deviation for mean. */
const unevenness = (of: readonly number[]): number =>
  Math.sqrt(mean(of.map((v) => (v - mean(of)) ** 2))) / mean(of);

describe('the motion of an iron over the work', () => {
  it('has over whole strokes the RMS of its half waves: (pi/T)^2 L/2 over the root of 2, with the gliding', () => {
    // T = 2 s, L = 0.4 m: 0.4935 m/s^2 at the ends, 0.03558 g RMS; with 0.03 g of gliding and 0.004 g of the sensor.
    const strokeG = ((Math.PI / 2) ** 2 * 0.2) / Math.SQRT2 / 9.80665;
    const all = Math.hypot(strokeG, 0.03, 0.004);
    expect(mean(values(onWork, 4, 400))).toBeGreaterThan(0.97 * all);
    expect(mean(values(onWork, 4, 400))).toBeLessThan(1.03 * all);
  });

  it('goes up and down within a stroke, the more the shorter the span of a value', () => {
    const [short, middle, long] = [0.1, 0.5, 1].map((spanS) => unevenness(values(onWork, spanS, 600)));
    expect(short ?? 0).toBeGreaterThan((middle ?? 1) + 0.02);
    expect(middle ?? 0).toBeGreaterThan((long ?? 1) + 0.02);
  });

  it('falls to the sensor’s noise where a stroke turns, in spans that are short enough', () => {
    const paused = { ...hand, turnS: 0.4 };
    expect(Math.min(...values(onWork, 0.1, 200, paused))).toBeLessThan(0.005);
    expect(Math.min(...values(onWork, 1, 200, paused))).toBeGreaterThan(0.015);
  });
});

describe('the motion of an iron that rests', () => {
  it.each([
    ['on the work', { place: 'on-work', still: true }],
    ['on its rest', { place: 'on-rest', still: true }],
  ] as const)('%s: the sensor’s noise, and now and then a knock of the bench', (_, doing) => {
    const all = values(doing, 0.1, 6000);
    expect(mean(all)).toBeLessThan(0.006);
    const knocks = all.filter((g) => g > 0.015).length;
    // Ten minutes at one a minute, most of them hard enough to be seen.
    expect(knocks).toBeGreaterThan(3);
    expect(knocks).toBeLessThan(20);
  });

  it('without a hand shows no knocks', () => {
    expect(Math.max(...values({ place: 'on-rest', still: false }, 0.1, 6000, null))).toBeLessThan(0.015);
  });
});
