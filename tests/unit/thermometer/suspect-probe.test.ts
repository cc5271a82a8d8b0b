import { describe, expect, test } from 'vitest';
import { emfUv, hotJunctionC, temperatureC } from '../../../shared/thermocouple/thermocouple.ts';
import { type ThermocoupleType, thermocoupleTypes } from '../../../shared/thermocouple/types.ts';
import {
  type Standing,
  type Suspicion,
  suspectType,
  watchForReversed,
} from '../../../shared/thermometer/suspect-probe.ts';

function known(value: number | null): number {
  if (value === null) throw new Error('out of range');
  return value;
}

/** What a probe of type `real` reads at `hotC` when its wires are swapped. */
function swapped(real: ThermocoupleType, hotC: number, coldC: number): number {
  const coldUv = known(emfUv(real, coldC));
  return known(temperatureC(real, coldUv - (known(emfUv(real, hotC)) - coldUv)));
}

/** What a probe of type `real` reads where it is settled as `set`. */
function misread(real: ThermocoupleType, set: ThermocoupleType, hotC: number, coldC: number): number {
  return known(hotJunctionC(set, known(emfUv(real, hotC)) - known(emfUv(real, coldC)), coldC));
}

function watch(readings: readonly number[], coldJunctionC: number | null): (Suspicion | null)[] {
  let standing: Standing | null = null;
  return readings.map((plateC, s) => {
    const step = watchForReversed(standing, { tMs: s * 1000, plateC, coldJunctionC });
    standing = step.standing;
    return step.suspicion;
  });
}

const warmUp = (fromC: number) => Array.from({ length: 160 }, (_, s) => fromC + Math.max(0, s - 30));

describe('swapped wires', () => {
  test.each(thermocoupleTypes)('type %s: said within half a minute of heat, and not before', (type) => {
    for (const junctionC of [22, null]) {
      const seen = watch(
        warmUp(20).map((c) => swapped(type, c, 22)),
        junctionC,
      );
      const first = seen.findIndex((s) => s !== null);
      expect(first).toBeGreaterThan(31);
      expect(first).toBeLessThan(60);
      expect(seen[first]).toEqual({ kind: 'reversed', likely: null });
    }
  });

  test('an iron that is hot already reads colder than any shop', () => {
    expect(watch([swapped('K', 150, 25)], 25)).toEqual([{ kind: 'reversed', likely: null }]);
  });

  test('never for one that was taken off a hot plate and cools in the air, however quickly', () => {
    for (const tauS of [5, 20, 60, 150, 400, 1000])
      for (const roomC of [5, 22]) {
        const readings = Array.from(
          { length: 3600 },
          (_, s) => roomC + (180 - roomC) * Math.exp(-s / tauS) + 0.1 * (s % 2),
        );
        expect(watch(readings, null).every((s) => s === null)).toBe(true);
      }
  });

  test('never for a right one: warm-up, cooling, a shop that grows cold, a board warmer than the iron', () => {
    const cooling = Array.from({ length: 7200 }, (_, s) => 5 + 37 * Math.exp(-s / 1000));
    const night = Array.from({ length: 7200 }, (_, s) => 20 - s / 300);
    for (const [readings, junctionC] of [
      [warmUp(20), 22],
      [warmUp(-5), 15],
      [cooling, 20],
      [night, null],
      [[12, 12, 12, 11.5, 11, 10.5], 35],
    ] as const)
      expect(watch(readings, junctionC).every((s) => s === null)).toBe(true);
  });
});

describe('the wrong type', () => {
  const pairs = thermocoupleTypes.flatMap((real) =>
    thermocoupleTypes.flatMap((set) => (real === set ? [] : [[real, set] as const])),
  );

  test.each(pairs)('type %s settled as %s is named from the chart', (real, set) => {
    for (const hotC of [121, 150, 177]) {
      const meanC = misread(real, set, hotC, 23);
      const likely = suspectType({ type: set, meanC, coldJunctionC: 23, chartC: hotC + 1 });
      // Where two types read within 8 K of one another the difference is left to the drift.
      if (Math.abs(meanC - (hotC + 1)) >= 8) expect(likely).toEqual({ kind: 'type', likely: real });
      else expect(likely).toBeNull();
    }
  });

  test('the right type, or a drift that no type explains, is not accused', () => {
    expect(suspectType({ type: 'K', meanC: 150, coldJunctionC: 23, chartC: 146 })).toBeNull();
    expect(suspectType({ type: 'K', meanC: 158, coldJunctionC: null, chartC: 135 })).toBeNull();
    expect(suspectType({ type: 'K', meanC: 150, coldJunctionC: 23, chartC: null })).toBeNull();
  });

  test('a plate that no household iron holds is odd even without a chart', () => {
    const seen = { type: 'K', coldJunctionC: 23, chartC: null } as const;
    expect(suspectType({ ...seen, meanC: 300 })).toEqual({ kind: 'type', likely: null });
    expect(suspectType({ ...seen, meanC: 50 })).toEqual({ kind: 'type', likely: null });
    expect(suspectType({ ...seen, meanC: 230 })).toBeNull();
  });
});
