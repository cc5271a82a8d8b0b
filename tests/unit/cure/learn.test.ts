import { describe, expect, test } from 'vitest';
import { type DryObservation, learn, nextFactor, usualBelief } from '../../../shared/cure/learn.ts';
import { observationsOf } from '../../../shared/cure/observe.ts';

const DAY_MS = 86_400_000;

/** A coat of day `day` whose hour of drying took between these times, min. */
const seen = (day: number, aboveMin: number, belowMin: number | null, hour = 0): DryObservation => ({
  fromUtcMs: day * DAY_MS + hour * 3_600_000,
  aboveS: aboveMin * 60,
  belowS: belowMin === null ? null : belowMin * 60,
  stageS: 3600,
});
const factorOf = (observations: readonly DryObservation[]): number => learn(observations).learned.factor;

describe('what is learned', () => {
  test('nothing: the factor is 1 exactly, and so is the middle of what the next coat may do', () => {
    const { learned, next } = learn([]);
    expect(learned).toMatchObject({ factor: 1, observations: 0 });
    expect(Math.abs(nextFactor(next, 0.5) - 1)).toBeLessThan(1e-12);
    // Nine tenths of 25 %, symmetric on the scale of its logarithm.
    expect(learned.high).toBeCloseTo(Math.exp(1.2815515655 * usualBelief.cementSd), 3);
    expect(learned.low * learned.high).toBeCloseTo(1, 6);
  });

  test('that tells nothing changes nothing, and isn’t counted', () => {
    expect(learn([{ ...seen(0, 0, null) }])).toEqual(learn([]));
  });

  test('found dry long after it should have been tells next to nothing', () => {
    expect(Math.abs(factorOf([seen(0, 0, 600)]) - 1)).toBeLessThan(0.01);
  });

  test('five coats dry at 0.8 of the time: nearly that; a tap early and one late say it less sharply', () => {
    const sharp = learn([0, 1, 2, 3, 4].map((day) => seen(day, 47, 49))).learned;
    const blunt = learn([0, 1, 2, 3, 4].map((day) => seen(day, 36, 60))).learned;
    expect(sharp.factor).toBeGreaterThan(0.8);
    expect(sharp.factor).toBeLessThan(0.84);
    expect(sharp.observations).toBe(5);
    expect(blunt.high - blunt.low).toBeGreaterThan(sharp.high - sharp.low);
    expect(sharp.high - sharp.low).toBeLessThan(learn([]).learned.high - learn([]).learned.low);
  });

  test('"still tacky" alone moves it up, "dry" alone down', () => {
    expect(factorOf([seen(0, 70, null)])).toBeGreaterThan(1.05);
    expect(factorOf([seen(0, 0, 50)])).toBeLessThan(0.95);
  });

  test('one odd coat among five moves the factor by less than 3 %', () => {
    const steady = [1, 2, 3, 4].map((day) => seen(day, 47, 49));
    const usual = factorOf([seen(0, 47, 49), ...steady]);
    for (const odd of [seen(0, 190, 200), seen(0, 6, 7), seen(0, 100, null)])
      expect(Math.abs(factorOf([odd, ...steady]) / usual - 1)).toBeLessThan(0.03);
  });

  test('one odd day with eight coats among five days moves it by less than 3 %, too', () => {
    const steady = [1, 2, 3, 4].map((day) => seen(day, 47, 49));
    const usual = factorOf([seen(0, 47, 49), ...steady]);
    const oddDay = Array.from({ length: 8 }, (_, i) => seen(0, 120, 125, i));
    expect(Math.abs(factorOf([...oddDay, ...steady]) / usual - 1)).toBeLessThan(0.03);
  });

  test('only the newest two hundred count', () => {
    const old = Array.from({ length: 50 }, (_, day) => seen(day, 85, 95));
    const newer = Array.from({ length: 200 }, (_, i) => seen(100 + Math.floor(i / 5), 47, 49, i % 5));
    expect(learn([...newer, ...old])).toEqual(learn(newer));
  });

  test('what contradicts itself tells only when it was dry', () => {
    expect(factorOf([seen(0, 50, 50)])).toBe(factorOf([seen(0, 0, 50)]));
    expect(factorOf([seen(0, 60, 50)])).toBe(factorOf([seen(0, 0, 50)]));
  });

  test('coats that can’t both be right leave a number', () => {
    const { learned, next } = learn(
      Array.from({ length: 300 }, (_, i) => seen(0, i % 2 ? 0.001 : 1e6, i % 2 ? 0.002 : 2e6, i % 12)),
    );
    expect(learned.low).toBeLessThan(learned.factor);
    expect(learned.factor).toBeLessThan(learned.high);
    expect(nextFactor(next, 0.9)).toBeLessThan(25);
  });
});

describe('the next coat', () => {
  const { next } = learn([]);

  test('known to be above something is never below it, and its quantiles keep their order', () => {
    for (const above of [0, 0.3, 0.9, 1, 1.5, 4, 30, 1e5]) {
      const [few, half, most] = [0.1, 0.5, 0.9].map((p) => nextFactor(next, p, above));
      if (few === undefined || half === undefined || most === undefined) return expect.unreachable();
      expect(few).toBeGreaterThanOrEqual(above);
      expect(half).toBeGreaterThanOrEqual(few);
      expect(most).toBeGreaterThanOrEqual(half);
    }
  });

  test('found tacky late it is expected some way beyond that', () => {
    expect(nextFactor(next, 0.5, 1.5)).toBeGreaterThan(1.55);
    expect(nextFactor(next, 0.5, 4)).toBeGreaterThan(4.2);
  });
});

describe('what the taps on a coat tell', () => {
  const stages = [
    { kind: 'set-to-touch', fromS: 1200, toS: 1800 },
    { kind: 'ready-for-iron', fromS: 3600, toS: 3600 },
  ] as const;
  type Tap = readonly [minutes: number, stage: (typeof stages)[number]['kind'], found: 'dry' | 'tacky'];
  const told = (...taps: readonly Tap[]) =>
    observationsOf(
      { stages },
      {
        fromUtcMs: 5,
        checks: taps.map(([minutes, stage, found]) => ({
          stage,
          found,
          atUtcMs: 5 + minutes * 60_000,
          curedS: minutes * 60,
        })),
      },
    );
  const iron = { fromUtcMs: 5, stageS: 3600 };

  test('between still tacky and dry', () => {
    expect(
      told([30, 'ready-for-iron', 'tacky'], [40, 'ready-for-iron', 'tacky'], [50, 'ready-for-iron', 'dry']),
    ).toEqual([{ ...iron, aboveS: 2400, belowS: 3000 }]);
  });

  test('the first "dry" counts, whatever order they come in', () => {
    expect(
      told([55, 'ready-for-iron', 'dry'], [50, 'ready-for-iron', 'dry'], [30, 'ready-for-iron', 'tacky']),
    ).toEqual([{ ...iron, aboveS: 1800, belowS: 3000 }]);
  });

  test('dry, and tacky again later: it was tacky', () => {
    expect(told([30, 'ready-for-iron', 'dry'], [40, 'ready-for-iron', 'tacky'])).toEqual([
      { ...iron, aboveS: 2400, belowS: null },
    ]);
  });

  test('each stage for itself, by the middle of its time; nothing of what nobody touched', () => {
    expect(told()).toEqual([]);
    expect(told([20, 'set-to-touch', 'dry'], [70, 'ready-for-iron', 'dry'])).toEqual([
      { fromUtcMs: 5, aboveS: 0, belowS: 1200, stageS: 1500 },
      { ...iron, aboveS: 0, belowS: 4200 },
    ]);
  });

  test('tacky before anything had dried tells nothing', () => {
    expect(told([0, 'ready-for-iron', 'tacky'])).toEqual([]);
  });
});
