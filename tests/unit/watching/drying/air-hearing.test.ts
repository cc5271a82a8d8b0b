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
      [null, 134],
    ] as const)
      expect(hearing.hear(said(airC, rhPct), 0)).toBeNull();
  });

  it('a little over saturation counts as saturated', () => {
    const hearing = new AirHearing();
    expect(hearing.hear(said(4, 105), 0)).toMatchObject({ airC: 4, rhPct: 100 });
    expect(hearing.probes(0)[0]?.refused).toEqual([]);
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

describe('what a probe tells that no air is like', () => {
  const refusedOf = (hearing: AirHearing, nowMs: number) =>
    hearing.probes(nowMs).flatMap(({ refused }) => refused);

  it('is told of with its value and time, and what it tells rightly beside it counts', () => {
    const hearing = new AirHearing();
    expect(hearing.hear(said(20, 134), 5000)).toMatchObject({ airC: 20, rhPct: null });
    expect(refusedOf(hearing, 6000)).toEqual([{ part: 'rhPct', value: 134, atMs: 5000 }]);
    hearing.hear(said(85, 50), 7000);
    expect(refusedOf(hearing, 8000)).toEqual([
      { part: 'airC', value: 85, atMs: 7000 },
      { part: 'rhPct', value: 134, atMs: 5000 },
    ]);
  });

  it('once, leaves what was told before for a minute', () => {
    const hearing = new AirHearing();
    hearing.hear(said(20, 50), 0);
    expect(hearing.hear(said(24, 134), 30_000)).toMatchObject({ airC: 24, rhPct: 50 });
    hearing.forget();
    expect(hearing.hear(said(24, 134), 61_000)).toMatchObject({ rhPct: null });
  });

  it('goes once the probe tells it rightly, but stands for a minute so that it is seen', () => {
    const hearing = new AirHearing();
    hearing.hear(said(20, 134), 0);
    hearing.hear(said(20, 50), 1000);
    expect(refusedOf(hearing, 59_000)).toHaveLength(1);
    expect(refusedOf(hearing, 60_000)).toEqual([]);
    // Rightly of one part says nothing of the other.
    hearing.hear(said(null, 140), 70_000);
    for (let s = 80; s < 300; s += 10) hearing.hear(said(20, null), s * 1000);
    expect(refusedOf(hearing, 300_000)).toEqual([{ part: 'rhPct', value: 140, atMs: 70_000 }]);
  });

  it('is no more, nor is what was told before, once a probe has told nothing but its plate for a quarter of an hour', () => {
    const hearing = new AirHearing();
    hearing.hear(said(20, 134), 0);
    for (let s = 1; s < 900; s += 1) hearing.hear(said(null, null), s * 1000);
    expect(hearing.probes(899_000)).toHaveLength(1);
    hearing.hear(said(null, null), 900_000);
    expect(hearing.probes(900_000)).toEqual([]);
  });

  it('goes once the probe has been silent for a quarter of an hour', () => {
    const hearing = new AirHearing();
    hearing.hear(said(85, null), 0);
    expect(hearing.probes(14 * MINUTE_MS)).toMatchObject([{ told: null, isSilent: true, isHeard: false }]);
    expect(refusedOf(hearing, 14 * MINUTE_MS)).toHaveLength(1);
    expect(hearing.probes(15 * MINUTE_MS)).toEqual([]);
  });

  it('that trembles is told anew once a minute at most, with the last value', () => {
    const hearing = new AirHearing();
    const shown = new Set<string>();
    for (let s = 0; s < 180; s += 1) {
      hearing.hear(said(20, 130 + (s % 7)), s * 1000);
      shown.add(JSON.stringify(refusedOf(hearing, s * 1000)));
    }
    expect(shown.size).toBe(3);
    expect(refusedOf(hearing, 180_000)).toEqual([{ part: 'rhPct', value: 131, atMs: 120_000 }]);
  });

  it('is silence: another probe is heard after two minutes of it', () => {
    const hearing = new AirHearing();
    hearing.hear(said(20, 50), 0);
    for (let s = 1; s < 119; s += 1) {
      expect(hearing.hear(said(-127, null), s * 1000)).toBeNull();
      expect(hearing.hear(said(30, 40, 'other/air'), s * 1000)).toBeNull();
    }
    expect(hearing.hear(said(30, 40, 'other/air'), 120_000)).toMatchObject({ airC: 30 });
  });
});

describe('of several probes', () => {
  const two = (chosen: string | null = null) => {
    const choice = { probe: chosen };
    const hearing = new AirHearing(() => choice.probe);
    const both = (atMs: number) =>
      [said(20, 50), said(30, 40, 'window/air')].flatMap((sample) => hearing.hear(sample, atMs) ?? []);
    return { hearing, choice, both };
  };

  it('each is told with its values, and which one is heard', () => {
    const { hearing, both } = two();
    both(0);
    expect(hearing.probes(1000)).toMatchObject([
      { probe: 'board/air', told: { airC: 20, rhPct: 50 }, isSilent: false, isHeard: true },
      { probe: 'window/air', told: { airC: 30, rhPct: 40 }, isSilent: false, isHeard: false },
    ]);
  });

  it('the chosen one alone is heard, and no other while it is silent', () => {
    const { hearing, choice, both } = two('window/air');
    expect(both(0)).toMatchObject([{ probe: 'window/air', airC: 30 }]);
    for (let minute = 1; minute < 30; minute += 1)
      expect(hearing.hear(said(20, 50), minute * MINUTE_MS)).toBeNull();
    expect(hearing.probes(30 * MINUTE_MS)).toMatchObject([
      { probe: 'board/air', isSilent: false, isHeard: false },
      { probe: 'window/air', isSilent: true, isHeard: false, told: { airC: 30, atMs: 0 } },
    ]);
    // Back to whichever is heard.
    choice.probe = null;
    expect(hearing.hear(said(20, 50), 30 * MINUTE_MS)).toMatchObject({ probe: 'board/air' });
  });

  it('one that is chosen anew is kept with its next line', () => {
    const { choice, both } = two();
    expect(both(0)).toMatchObject([{ probe: 'board/air' }]);
    choice.probe = 'window/air';
    expect(both(1000)).toMatchObject([{ probe: 'window/air' }]);
  });

  it('one that was chosen and never heard is told of', () => {
    const { hearing } = two('lost/air');
    expect(hearing.probes(0)).toEqual([
      { probe: 'lost/air', told: null, isSilent: true, isHeard: false, refused: [] },
    ]);
  });

  it('one that trembles is shown anew no more often than air is kept', () => {
    const hearing = new AirHearing();
    const shown = new Set<string>();
    for (let s = 0; s < 600; s += 1) {
      hearing.hear(said(20, 50), s * 1000);
      hearing.hear(said(30 + (s % 2), 40, 'window/air'), s * 1000);
      shown.add(JSON.stringify(hearing.probes(s * 1000)));
    }
    expect(shown.size).toBeLessThanOrEqual(7);
  });
});
