import { describe, expect, it } from 'vitest';
import type { StageClock } from '../../../shared/cure/clock.ts';
import { mayBurn } from '../../../shared/cure/vapour.ts';
import { MINUTE_MS, NOW_MS } from './curing.ts';

const iron: StageClock = {
  kind: 'ready-for-iron',
  saidDryMs: null,
  saidTackyMs: null,
  earliestMs: NOW_MS + 40 * MINUTE_MS,
  likelyMs: NOW_MS + 60 * MINUTE_MS,
  latestMs: NOW_MS + 90 * MINUTE_MS,
};

/** A coat that was put on so many minutes ago, past its latest time unless it is said to be wet. */
const burns = (minutes: number, stages: readonly StageClock[], { wet = false, flammable = true } = {}) =>
  mayBurn({
    cement: { flammable },
    clock: { stages, wet },
    fromUtcMs: NOW_MS,
    nowUtcMs: NOW_MS + minutes * MINUTE_MS,
  });

describe('a coat’s vapour counts as burning', () => {
  it('until half as long again as its latest time for an iron is past', () => {
    expect([90, 134].map((minutes) => burns(minutes, [iron]))).toEqual([true, true]);
    expect(burns(135, [iron])).toBe(false);
  });

  it('until a person has said that it is ready for one', () =>
    expect(burns(95, [{ ...iron, saidDryMs: NOW_MS + 94 * MINUTE_MS }])).toBe(false));

  it('without end where it can’t be said when it dries', () =>
    expect(burns(100_000, [{ ...iron, latestMs: null }])).toBe(true));

  it('by the next later stage where none is given for an iron', () => {
    expect(
      burns(134, [
        { ...iron, kind: 'set-to-touch', latestMs: NOW_MS },
        { ...iron, kind: 'cured' },
      ]),
    ).toBe(true);
    expect(
      burns(135, [
        { ...iron, kind: 'set-to-touch', latestMs: NOW_MS },
        { ...iron, kind: 'cured' },
      ]),
    ).toBe(false);
  });

  it('for as long as it is wet for an iron: found tacky, or with no time for an iron given', () => {
    expect(burns(5000, [iron], { wet: true })).toBe(true);
    expect(burns(5000, [{ ...iron, kind: 'set-to-touch' }], { wet: true })).toBe(true);
    expect(burns(5000, [{ ...iron, kind: 'set-to-touch' }])).toBe(false);
  });

  it('never where the cement’s doesn’t', () =>
    expect(burns(1, [{ ...iron, latestMs: null }], { wet: true, flammable: false })).toBe(false));
});
