import { describe, expect, it } from 'vitest';
import { emptyPad, onPad, PAD_GAP_MS, padSilent, saysCold } from '../../../../shared/iron/check/pad.ts';
import { cycling, demoPad, live, parked } from './pads.ts';

describe('an iron parked on a check pad', () => {
  it('is read from contact to settled value, and told again as it is taken off', () => {
    const { found } = live(120, parked(150, 20, 80));
    expect(found.map((f) => f.ended)).toEqual([null, 'lifted']);
    const [settled, lifted] = found;
    expect(settled?.fromMs).toBeGreaterThanOrEqual(18_000);
    expect(settled?.fromMs).toBeLessThanOrEqual(20_500);
    // Closed form: 129 K of way, 2 K of it left after tau * ln(129 / 2) = 25 s.
    expect(settled?.settledMs).toBeGreaterThan(44_000);
    expect(settled?.settledMs).toBeLessThan(49_000);
    expect(150 - (settled?.hottestC ?? 0)).toBeLessThanOrEqual(2);
    expect(settled?.remainingK).toBeCloseTo(150 - (settled?.hottestC ?? 0), 1);
    expect(lifted).toMatchObject({ fromMs: settled?.fromMs, settledMs: settled?.settledMs });
    expect(lifted?.hottestC).toBeGreaterThan(149.9);
    expect(lifted?.toMs).toBeLessThan(85_000);
  });

  it('is no check where it is taken off before that', () => {
    const { found } = live(120, parked(150, 20, 32));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ settledMs: null, ended: 'lifted' });
    // Closed form: 150 - 129 * exp(-12 / 6) at the last moment; a level is the mean of a second.
    const lastC = 150 - 129 * Math.exp(-2);
    expect(found[0]?.hottestC).toBeLessThan(lastC);
    expect(found[0]?.hottestC).toBeGreaterThan(lastC - 3);
    expect(found[0]?.remainingK ?? Number.POSITIVE_INFINITY).toBeGreaterThan(10);
  });

  it.each([9, 15, 20, 24])('is no check where it was taken off after %i s, whatever came before', (forS) => {
    const settled = live(400, parked(150, 20, 20 + forS)).found.filter((f) => f.settledMs !== null);
    expect(settled).toEqual([]);
  });

  it('is read with noise and a coarse step alike', () => {
    for (const traits of [
      { ...demoPad, noiseK: 0.3 },
      { ...demoPad, resolutionK: 1, everyS: 1 },
      { ...demoPad, noiseK: 0.5, resolutionK: 0.25, everyS: 0.1 },
    ]) {
      const { found } = live(160, parked(150, 20, 120), traits);
      expect(found.map((f) => [f.settledMs !== null, f.ended])).toEqual([
        [true, null],
        [true, 'lifted'],
      ]);
      expect(Math.abs((found[1]?.hottestC ?? 0) - 150)).toBeLessThan(1.6);
    }
  });

  it('is read by a board that sends every five seconds', () => {
    const { found } = live(300, parked(150, 20, 200), { ...demoPad, everyS: 5 });
    expect(found.map((f) => [f.settledMs !== null, f.ended])).toEqual([
      [true, null],
      [true, 'lifted'],
    ]);
  });

  it('waits for a pad that is slower than was allowed for', () => {
    const slow = { ...demoPad, lagS: 20, airS: 90 };
    const { found } = live(300, parked(150, 20, 200), slow, { tauS: null, uK: 2 });
    expect(150 - (found[0]?.hottestC ?? 0)).toBeLessThan(3);
  });

  it('is read again while the pad is still warm from the last time, hotter or less hot', () => {
    const { found } = live(
      300,
      (s) => parked(150, 20, 80)(s) ?? parked(165, 100, 160)(s) ?? parked(110, 170, 260)(s),
    );
    const ends = found.filter((f) => f.ended === 'lifted');
    expect(ends.map((f) => [f.settledMs !== null, Math.round(f.hottestC)])).toEqual([
      [true, 150],
      [true, 165],
      [true, 110],
    ]);
  });

  it('gives the hottest of a plate that its thermostat swings', () => {
    const plate = cycling(150, 400, 900);
    const { found } = live(1000, plate, { ...demoPad, noiseK: 0.1 });
    const [, end] = found;
    expect(found).toHaveLength(2);
    const truth = Array.from({ length: 800 }, (_, i) => plate(410 + i * 0.5) ?? 0);
    expect(Math.max(...truth) - (end?.hottestC ?? 0)).toBeLessThan(2.5);
    expect((end?.lowestC ?? 0) - Math.min(...truth)).toBeLessThan(4);
    expect(end?.ended).toBe('lifted');
  });

  it('is not settled while it is brought up', () => {
    const { found } = live(120, (s) => (s < 10 ? null : Math.min(140, 21 + 1.2 * (s - 10))));
    const [settled] = found;
    // It comes to 140 degC after 109 s; the pad trails it by 1.2 K/s * 6 s.
    expect(settled?.settledMs ?? Number.POSITIVE_INFINITY).toBeGreaterThan(109_000);
  });

  it('is recognised where it lay there before the first reading', () => {
    let pad = emptyPad;
    const found = [];
    for (let s = 0; s < 30; s++) {
      const step = onPad(pad, { tMs: s * 1000, padC: 140 + 0.02 * (s % 2), tauS: 6, uK: 2 });
      pad = step.pad;
      found.push(...step.found);
    }
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ ended: null });
  });
});

describe('a bare check pad', () => {
  it('is never taken for an iron: cooling, in a room that warms up, in noise', () => {
    const room = live(3600, () => null, { ...demoPad, noiseK: 0.5, everyS: 1 });
    expect(room.found).toEqual([]);
    let pad = emptyPad;
    const found = [];
    for (let s = 0; s < 7200; s++) {
      const sun = 21 + 15 * Math.sin(s / 4000);
      const step = onPad(pad, { tMs: s * 1000, padC: sun + 110 * Math.exp(-s / 90), tauS: 6, uK: 2 });
      pad = step.pad;
      found.push(...step.found);
    }
    expect(found).toEqual([]);
    expect(pad.levels.length).toBeLessThan(40);
  });

  it('ends a check where it has not read for long', () => {
    const { pad } = live(60, parked(150, 20, 200));
    expect(padSilent(pad, 60_000 + PAD_GAP_MS)).toEqual({ pad, found: [] });
    const lost = padSilent(pad, 60_001 + PAD_GAP_MS);
    expect(lost.found).toMatchObject([{ ended: 'lost' }]);
    expect(lost.pad).toEqual(emptyPad);
  });
});

describe('a check of a plate that is nearly cold', () => {
  it('says so only by its hottest', () => {
    const cold = live(120, parked(36, 20, 80)).found.at(-1);
    expect(cold).toMatchObject({ ended: null });
    expect(cold !== undefined && saysCold(cold)).toBe(true);
    const cooled = live(2000, (s) => (s < 20 ? null : 22 + 120 * Math.exp(-(s - 20) / 300))).found.at(-1);
    expect(cooled !== undefined && saysCold(cooled)).toBe(false);
  });
});
