import { describe, expect, test } from 'vitest';
import { followPlate as followJunction } from '../../../../daemon/probe/simulated/probe.ts';
import {
  type KnownProbe,
  type LagFilter,
  type PlateEstimate,
  plateEstimate,
  trackPlate,
  UNMEASURED_LAG_S,
  unmeasuredProbe,
} from '../../../../shared/thermometer/lag/filter.ts';

const fine: KnownProbe = { noiseK: 0.05, resolutionK: 0.01, lag: null };
const lagging = (tauS: number, standardS = 0): KnownProbe => ({ ...fine, lag: { tauS, standardS } });

/** What is found of a plate that goes as `plateC` says, read every `periodMs` through a lag, without noise. */
function watched(
  plateC: (tS: number) => number,
  probe: KnownProbe,
  { tauS = probe.lag?.tauS ?? 0, periodMs = 100, untilS = 60, stepK = 0 } = {},
): PlateEstimate {
  let filter: LagFilter | null = null;
  let junctionC = plateC(0);
  for (let tMs = 0; tMs <= untilS * 1000; tMs += periodMs) {
    const fromS = Math.max(0, tMs - periodMs) / 1000;
    const way = { fromC: plateC(fromS), toC: plateC(tMs / 1000), dtS: tMs / 1000 - fromS };
    junctionC = followJunction(tauS, junctionC, way);
    filter = trackPlate(filter, tMs, stepK > 0 ? Math.round(junctionC / stepK) * stepK : junctionC, probe);
  }
  if (filter === null) throw new Error('nothing watched');
  return plateEstimate(filter, probe);
}

describe('of a plate at rest', () => {
  test('it finds the temperature, no slope, and that no lag matters', () => {
    for (const probe of [fine, lagging(3), unmeasuredProbe]) {
      const found = watched(() => 150, probe);
      expect(found.plateC).toBeCloseTo(150, 6);
      expect(found.slopeKPerS).toBeCloseTo(0, 6);
      expect(found.aheadK).toBeCloseTo(0, 6);
    }
  });

  test('a coarse probe’s rounding stays in its uncertainty, however long it repeats itself', () => {
    const found = watched(() => 150.4, { ...fine, resolutionK: 1 }, { untilS: 600, stepK: 1 });
    expect(found.standardK).toBeGreaterThan(1 / Math.sqrt(12));
    expect(Math.abs(found.plateC - 150.4)).toBeLessThan(2 * found.standardK);
  });
});

describe('of a plate that rises evenly', () => {
  const rise = (tS: number) => 100 + 1.5 * tS;

  test.each([100, 250, 1000])(
    'it finds slope and plate behind a known lag, a line every %d ms',
    (periodMs) => {
      for (const tauS of [0.5, 2, 6]) {
        const found = watched(rise, lagging(tauS), { periodMs });
        expect(found.slopeKPerS).toBeCloseTo(1.5, 3);
        expect(found.plateC).toBeCloseTo(rise(60), 1);
        expect(found.aheadK).toBe(0);
      }
    },
  );

  test('behind an unknown one the junction, and how far the plate may be ahead of it', () => {
    const found = watched(rise, fine, { tauS: 3 });
    expect(found.plateC).toBeCloseTo(rise(60) - 3 * 1.5, 1);
    expect(found.aheadK).toBeGreaterThan(0.9 * UNMEASURED_LAG_S * 1.5);
    expect(found.aheadK).toBeLessThanOrEqual(UNMEASURED_LAG_S * 1.5);
  });

  test('it is ahead below where the plate falls', () => {
    expect(watched((tS) => 200 - tS, fine, { tauS: 3 }).aheadK).toBeLessThan(-0.9 * UNMEASURED_LAG_S);
  });

  test('a time constant that is itself uncertain widens what is known of a moving plate', () => {
    const sure = watched(rise, lagging(3));
    const unsure = watched(rise, lagging(3, 0.5));
    expect(unsure.standardK ** 2 - sure.standardK ** 2).toBeCloseTo((0.5 * 1.5) ** 2, 2);
  });
});

describe('time', () => {
  const step = (was: LagFilter | null, atMs: number, c: number): LagFilter =>
    trackPlate(was, atMs, c, lagging(2));

  test('a line that was placed a little before the last one spoils nothing', () => {
    let filter: LagFilter | null = null;
    for (let i = 0; i < 300; i++) filter = step(filter, i % 7 === 3 ? i * 100 - 130 : i * 100, 100 + i * 0.1);
    expect(Math.abs((filter?.slopeKPerS ?? 0) - 1)).toBeLessThan(0.05);
  });

  test('a gap makes it less sure; after a long one it begins anew', () => {
    let filter: LagFilter | null = null;
    for (let i = 0; i < 300; i++) filter = step(filter, i * 100, 100 + i * 0.1);
    if (filter === null) return expect.unreachable();
    const after = step(filter, filter.atMs + 10_000, 140);
    expect(after.ss).toBeGreaterThan(filter.ss);
    const anew = step(filter, filter.atMs + 40_000, 60);
    expect(anew).toMatchObject({ plateC: 60, slopeKPerS: 0 });
    expect(anew.noise.count).toBeGreaterThan(100);
  });
});

test('it survives JSON unchanged', () => {
  let filter: LagFilter | null = null;
  for (let i = 0; i < 50; i++) {
    filter = trackPlate(filter, i * 100, 20 + (i % 3), unmeasuredProbe);
    expect(JSON.parse(JSON.stringify(filter))).toEqual(filter);
  }
});
