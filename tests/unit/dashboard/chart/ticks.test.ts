import { describe, expect, it } from 'vitest';
import { temperatureTicks, timeTicks } from '../../../../dashboard/chart/ticks.ts';

describe('lines of the time scale', () => {
  it('stand on round times, no more of them than there is room for', () => {
    expect(timeTicks({ fromMs: 0, toMs: 60_000 }, 6, 0)).toEqual({
      stepMs: 10_000,
      at: [0, 10_000, 20_000, 30_000, 40_000, 50_000, 60_000],
    });
    for (const length of [2000, 90_000, 3_600_000, 8 * 3_600_000, 90 * 3_600_000]) {
      const { at, stepMs } = timeTicks({ fromMs: 123, toMs: 123 + length }, 7, 0);
      expect(at.length).toBeLessThanOrEqual(8);
      expect(at.length).toBeGreaterThan(1);
      expect(at.every((tMs) => tMs % stepMs === 0)).toBe(true);
    }
  });

  it('are round on the clock, wherever the session began', () => {
    const startedMs = Date.UTC(2026, 2, 1, 8, 13, 27, 400);
    const { at, stepMs } = timeTicks({ fromMs: 0, toMs: 3_600_000 }, 8, -startedMs % 86_400_000);
    expect(stepMs).toBe(600_000);
    expect(at.map((tMs) => new Date(startedMs + tMs).toISOString().slice(11, 19))).toEqual([
      '08:20:00',
      '08:30:00',
      '08:40:00',
      '08:50:00',
      '09:00:00',
      '09:10:00',
    ]);
  });
});

describe('lines of the temperature scale', () => {
  it('are round numbers in the unit that is shown', () => {
    const range = { lowC: 15, highC: 205 };
    expect(temperatureTicks(range, 'C', 5)).toEqual([50, 100, 150, 200]);
    const inF = temperatureTicks(range, 'F', 5).map((c) => (c * 9) / 5 + 32);
    expect(inF.map((f) => Math.round(f * 1e6) / 1e6)).toEqual([100, 200, 300, 400]);
  });
});
