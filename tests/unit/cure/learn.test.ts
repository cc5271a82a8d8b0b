import { describe, expect, test } from 'vitest';
import { type DryObservation, learn, nextFactor, usualBelief } from '../../../shared/cure/learn.ts';
import { observationOf } from '../../../shared/cure/observe.ts';

const DAY_MS = 86_400_000;

/** A coat of day `day` whose hour of drying took between these times, min. */
const seen = (day: number, aboveMin: number, belowMin: number | null, hour = 0): DryObservation => ({
  fromUtcMs: day * DAY_MS + hour * 3_600_000,
  stages: [{ aboveS: aboveMin * 60, belowS: belowMin === null ? null : belowMin * 60, stageS: 3600 }],
});
/** The same coat touched at so many stages, of other times and with the same result. */
const throughout = ({ fromUtcMs, stages }: DryObservation, count: number): DryObservation => ({
  fromUtcMs,
  stages: Array.from({ length: count }, (_, i) =>
    stages.map(({ aboveS, belowS, stageS }) => ({
      aboveS: aboveS * 2 ** i,
      belowS: belowS === null ? null : belowS * 2 ** i,
      stageS: stageS * 2 ** i,
    })),
  ).flat(),
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
    expect(learn([{ fromUtcMs: 0, stages: [] }])).toEqual(learn([]));
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

  test('a coat that was touched at four stages is one coat: it weighs far less than four', () => {
    const [one, throughAll] = [seen(0, 47, 49), throughout(seen(0, 47, 49), 4)].map(
      (coat) => learn([coat]).learned,
    );
    const four = learn([0, 1, 2, 3].map((hour) => seen(0, 47, 49, hour))).learned;
    expect([one?.observations, throughAll?.observations, four.observations]).toEqual([1, 1, 4]);
    // It is known a little better by four touches than by one.
    expect(throughAll?.factor).toBeLessThan(one?.factor ?? 0);
    expect(throughAll?.factor).toBeGreaterThan(four.factor);
  });

  test('stages of a coat that go apart leave a number between them', () => {
    const [touch] = seen(0, 25, 30).stages;
    const [iron] = seen(0, 80, 90).stages;
    if (touch === undefined || iron === undefined) return expect.unreachable();
    const factor = factorOf([{ fromUtcMs: 0, stages: [touch, iron] }]);
    expect(factor).toBeGreaterThan(factorOf([{ fromUtcMs: 0, stages: [touch] }]));
    expect(factor).toBeLessThan(factorOf([{ fromUtcMs: 0, stages: [iron] }]));
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
    observationOf(
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
  const iron = (aboveS: number, belowS: number | null) => ({
    fromUtcMs: 5,
    stages: [{ aboveS, belowS, stageS: 3600 }],
  });

  test('between still tacky and dry', () => {
    expect(
      told([30, 'ready-for-iron', 'tacky'], [40, 'ready-for-iron', 'tacky'], [50, 'ready-for-iron', 'dry']),
    ).toEqual(iron(2400, 3000));
  });

  test('the first "dry" counts, whatever order they come in', () => {
    expect(
      told([55, 'ready-for-iron', 'dry'], [50, 'ready-for-iron', 'dry'], [30, 'ready-for-iron', 'tacky']),
    ).toEqual(iron(1800, 3000));
  });

  test('dry, and tacky again later: it was tacky', () => {
    expect(told([30, 'ready-for-iron', 'dry'], [40, 'ready-for-iron', 'tacky'])).toEqual(iron(2400, null));
  });

  test('each stage for itself, by the middle of its time; nothing of what nobody touched', () => {
    expect(told()).toBeNull();
    expect(told([20, 'set-to-touch', 'dry'], [70, 'ready-for-iron', 'dry'])).toEqual({
      fromUtcMs: 5,
      stages: [
        { aboveS: 0, belowS: 1200, stageS: 1500 },
        { aboveS: 0, belowS: 4200, stageS: 3600 },
      ],
    });
  });

  test('a word at a later stage teaches that one alone: when an earlier one came nobody has seen', () => {
    expect(told([20, 'set-to-touch', 'tacky'], [70, 'ready-for-iron', 'dry'])).toEqual({
      fromUtcMs: 5,
      stages: [
        { aboveS: 1200, belowS: null, stageS: 1500 },
        { aboveS: 0, belowS: 4200, stageS: 3600 },
      ],
    });
    expect(told([70, 'ready-for-iron', 'dry'])).toEqual(iron(0, 4200));
  });

  test('tacky before anything had dried tells nothing', () => {
    expect(told([0, 'ready-for-iron', 'tacky'])).toBeNull();
  });
});
