import { describe, expect, it } from 'vitest';
import { airAnswer } from '../../../../daemon/watching/drying/air-answer.ts';
import { nothingDries, type ToldAir } from '../../../../shared/shop/drying.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const NOW = Date.parse('2026-03-04T13:20:00Z');

const told = (minutesAgo: number): ToldAir => ({
  atUtcMs: NOW - minutesAgo * MINUTE_MS,
  airC: 20,
  rhPct: 50,
  how: 'probe',
  probe: 'bench-board/air',
});

it('a day of the air is thinned out by time: a quiet night beside a busy day has no gaps', () => {
  const night = Array.from({ length: 60 }, (_, i) => told(24 * 60 - 5 - i * 10));
  const day = Array.from({ length: 14 * 60 * 6 }, (_, i) => told((14 * 60 * 6 - i) / 6));
  const { history } = airAnswer({ ...nothingDries, air: [...night, ...day] }, [], NOW);
  const at = history.map((point) => Date.parse(point.at));
  expect(history.length).toBeLessThanOrEqual(300);
  expect(Math.max(...at.map((ms, i) => ms - (at[i - 1] ?? ms)))).toBeLessThanOrEqual(15 * MINUTE_MS);
  // The newest stands.
  expect(at.at(-1)).toBe(day.at(-1)?.atUtcMs);
  expect((at[0] ?? 0) - (NOW - 24 * HOUR_MS)).toBeLessThanOrEqual(15 * MINUTE_MS);
});

describe('the air of now', () => {
  const forecast = [{ airC: 13, rhPct: 80, atUtcMs: NOW - MINUTE_MS, how: 'forecast' as const }];
  const now = (air: readonly ToldAir[]) => airAnswer({ ...nothingDries, air, forecast }, [], NOW).now;
  const typed = (minutesAgo: number): ToldAir => ({ ...told(minutesAgo), how: 'typed', probe: '' });

  it('is what the clocks go by: what was told, for as long as it holds', () => {
    expect([now([typed(239)]), now([told(14)])]).toMatchObject([
      { how: 'typed', airC: 20, old: false },
      { how: 'probe', probe: 'bench-board/air', old: false },
    ]);
    expect([now([typed(241)]), now([told(16)]), now([])]).toMatchObject(
      [0, 1, 2].map(() => ({ how: 'forecast', airC: 13, probe: '' })),
    );
  });

  it('that was told last counts at once, though it is told of a moment from now', () =>
    expect(now([typed(20), told(-0.01)])).toMatchObject({ how: 'probe' }));

  it('told long ago, with no forecast since, is told as old', () => {
    const air = [typed(300)];
    expect(airAnswer({ ...nothingDries, air }, [], NOW).now).toMatchObject({ how: 'typed', old: true });
  });
});
