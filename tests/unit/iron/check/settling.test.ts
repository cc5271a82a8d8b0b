import { describe, expect, it } from 'vitest';
import { type Level, riseS, settlingOf } from '../../../../shared/iron/check/settling.ts';

/** The closed form of a first-order step from 20 to 150 degC. */
const step = (tauS: number, fromS: number, toS: number, everyS = 1): Level[] =>
  Array.from({ length: Math.round((toS - fromS) / everyS) + 1 }, (_, i) => {
    const s = fromS + i * everyS;
    return { tMs: 1000 * s, levelC: 150 - 130 * Math.exp(-s / tauS) };
  });

describe('a first-order approach', () => {
  it.each([2, 6, 15])('gives what is left of the way exactly, with a time constant of %i s', (tauS) => {
    const levels = step(tauS, 1, 1 + tauS, 0.5);
    const left = 130 * Math.exp(-(1 + tauS) / tauS);
    const settling = settlingOf(levels, tauS);
    expect(settling?.remainingK).toBeCloseTo(left, 9);
    expect(settling?.slopeKPerS).toBeGreaterThan(left / tauS);
    expect(settling?.standardK).toBeCloseTo(0, 6);
  });

  it('gives less than nothing for a fall', () => {
    const falling = step(6, 0, 6).map(({ tMs, levelC }) => ({ tMs, levelC: 300 - levelC }));
    expect(settlingOf(falling, 6)?.remainingK).toBeCloseTo(-130 / Math.E, 9);
  });

  it('tells by its error that the levels follow no such approach', () => {
    const tent = step(6, 0, 12).map(({ tMs }) => ({ tMs, levelC: 100 - Math.abs(tMs / 1000 - 6) * 5 }));
    expect(settlingOf(tent, 6)?.standardK).toBeGreaterThan(1);
  });

  it('says nothing of three levels, or of one moment', () => {
    expect(settlingOf(step(6, 0, 2), 6)).toBeNull();
    expect(
      settlingOf(
        [1, 2, 3, 4].map((levelC) => ({ tMs: 5, levelC })),
        6,
      ),
    ).toBeNull();
  });
});

describe('the time constant that a rise shows', () => {
  it('is the real one once the rise is over, and no more before', () => {
    expect(riseS(step(6, 0, 60, 0.5))).toBeCloseTo(6, 1);
    const early = riseS(step(6, 0, 6, 0.5)) ?? 0;
    expect(early).toBeGreaterThan(2);
    expect(early).toBeLessThan(6);
  });

  it('is none where nothing rose', () => {
    expect(riseS([{ tMs: 0, levelC: 20 }])).toBeNull();
    expect(
      riseS([
        { tMs: 0, levelC: 20 },
        { tMs: 1000, levelC: 19 },
      ]),
    ).toBeNull();
  });
});
