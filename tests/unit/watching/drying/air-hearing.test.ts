import { describe, expect, it } from 'vitest';
import { AirHearing } from '../../../../daemon/watching/drying/air-hearing.ts';
import { emptySample } from '../../../../shared/thermometer/sample.ts';

const said = (airC: number | null, rhPct: number | null, probe = 'board/air') => ({
  ...emptySample(probe),
  airC,
  rhPct,
});
const MINUTE_MS = 60_000;

describe('the air that lines tell', () => {
  it('is kept as it changes, and at least every ten minutes', () => {
    const hearing = new AirHearing();
    const kept = Array.from({ length: 40 }, (_, minute) =>
      hearing.hear(said(minute < 25 ? 20 : 24, 50), minute * MINUTE_MS) === null ? null : minute,
    ).filter((minute) => minute !== null);
    expect(kept).toEqual([0, 10, 20, 25, 35]);
  });

  it('that trembles is kept no more often than every two minutes, and one that jumps about every ten seconds', () => {
    const kept = (byK: number) => {
      const hearing = new AirHearing();
      const heard = Array.from({ length: 600 }, (_, s) =>
        hearing.hear(said(20 + (s % 2) * byK, 50), s * 1000),
      );
      return heard.filter((one) => one !== null).length;
    };
    expect(kept(1)).toBeLessThanOrEqual(5);
    expect(kept(5)).toBeLessThanOrEqual(60);
  });

  it('that can be none is not heard', () => {
    const hearing = new AirHearing();
    for (const [airC, rhPct] of [
      [null, 50],
      [85, 50],
      [-127, 50],
      [20, 101],
    ] as const)
      expect(hearing.hear(said(airC, rhPct), 0)).toBeNull();
  });

  it('may come in lines of their own: those of one probe within a minute belong together', () => {
    const hearing = new AirHearing();
    expect(hearing.hear(said(null, 60), 0)).toBeNull();
    expect(hearing.hear(said(20, null), 30_000)).toMatchObject({ airC: 20, rhPct: 60 });
    expect(hearing.hear(said(null, 70), 60_000)).toMatchObject({ airC: 20, rhPct: 70 });
    // Too old to be of the same air.
    expect(hearing.hear(said(22, null), 121_000)).toMatchObject({ airC: 22, rhPct: null });
    expect(hearing.hear(said(null, 50), 182_000)).toBeNull();
  });

  it('of two probes is not put together', () => {
    const hearing = new AirHearing();
    expect(hearing.hear(said(null, 60, 'other/air'), 0)).toBeNull();
    expect(hearing.hear(said(20, null), 1000)).toMatchObject({ airC: 20, rhPct: null });
  });

  it('whose humidity comes and goes is kept no more often for that', () => {
    const hearing = new AirHearing();
    const heard = Array.from({ length: 600 }, (_, s) =>
      hearing.hear(said(20, s % 2 === 0 ? 50 : null), s * 1000),
    );
    expect(heard.filter((one) => one !== null)).toHaveLength(1);
  });

  it('of a second probe counts once the first is silent', () => {
    const hearing = new AirHearing();
    expect(hearing.hear(said(20, 50), 0)).not.toBeNull();
    expect(hearing.hear(said(30, 40, 'other/air'), 60_000)).toBeNull();
    expect(hearing.hear(said(30, 40, 'other/air'), 130_000)).toMatchObject({ probe: 'other/air', airC: 30 });
  });

  it('is kept at once after something else has told it', () => {
    const hearing = new AirHearing();
    hearing.hear(said(20, 50), 0);
    hearing.forget();
    expect(hearing.hear(said(20, 50), 1000)).not.toBeNull();
  });
});
