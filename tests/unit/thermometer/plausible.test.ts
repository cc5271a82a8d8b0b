import { describe, expect, test } from 'vitest';
import {
  type Held,
  hold,
  isFrozen,
  JUMP_K,
  judgeJump,
  type Level,
} from '../../../shared/thermometer/plausible.ts';

/** Feeds values at 10 Hz; tells for each whether it was a jump. */
function jumps(values: readonly number[], stepMs = 100): boolean[] {
  let level: Level | null = null;
  return values.map((plateC, i) => {
    const judged = judgeJump(level, plateC, i * stepMs);
    level = judged.level;
    return judged.jump;
  });
}

describe('jumps', () => {
  test('a change of over 50 K between two readings is one, up and down', () => {
    expect(JUMP_K).toBe(50);
    expect(jumps([150, 100])).toEqual([false, false]);
    expect(jumps([150, 99.9])).toEqual([false, true]);
    expect(jumps([150, 200.1])).toEqual([false, true]);
  });

  test('a single wild value leaves the level where it was', () => {
    expect(jumps([150, 20, 150, 151])).toEqual([false, true, false, false]);
  });

  test('a new level is believed once readings have agreed on it for three seconds', () => {
    const values = [150, ...Array.from({ length: 40 }, (_, i) => 60 - i * 0.1)];
    const judged = jumps(values);
    expect(judged.slice(1, 31).every(Boolean)).toBe(true);
    expect(judged.slice(31).some(Boolean)).toBe(false);
  });

  test('of a slow device, by three readings at least', () => {
    expect(jumps([150, 60, 60, 60, 60], 1600)).toEqual([false, true, true, false, false]);
  });

  test('values that don’t agree with one another are never believed', () => {
    const wild = Array.from({ length: 200 }, (_, i) => (i % 2 === 0 ? 20 : 60));
    expect(
      jumps([150, ...wild])
        .slice(1)
        .every(Boolean),
    ).toBe(true);
  });

  test('after a gap in which the plate may well have moved, the new value is taken', () => {
    expect(jumps([150, 60], 25_001)).toEqual([false, false]);
    expect(jumps([150, 60], 25_000)).toEqual([false, true]);
  });
});

const held = (more: Partial<Held>): Held => ({
  value: 120,
  sinceMs: 0,
  paceKPerS: 1,
  resolutionK: 0.25,
  ...more,
});

describe('frozen', () => {
  test('resolution is the smallest change that was seen, and the value stands since it came', () => {
    let now = hold(null, 100, 0, null);
    now = hold(now, 100.5, 100, 0.7);
    now = hold(now, 100.25, 200, -0.4);
    now = hold(now, 101, 300, 0.9);
    expect(hold(now, 101, 400, 0)).toBe(now);
    expect(now).toEqual({ value: 101, sinceMs: 300, paceKPerS: 0.9, resolutionK: 0.25 });
  });

  test('judged by resolution: a fine probe that stops in a rise of 1 K/s is found in 10 s', () => {
    expect(isFrozen(held({}), 9_999)).toBe(false);
    expect(isFrozen(held({}), 10_000)).toBe(true);
  });

  test('one that counts in whole degrees, in 40 s', () => {
    expect(isFrozen(held({ resolutionK: 1 }), 39_999)).toBe(false);
    expect(isFrozen(held({ resolutionK: 1 }), 40_000)).toBe(true);
  });

  test('judged by the pace: half the pace takes twice as long', () => {
    expect(isFrozen(held({ resolutionK: 1, paceKPerS: 0.5 }), 79_999)).toBe(false);
    expect(isFrozen(held({ resolutionK: 1, paceKPerS: 0.5 }), 80_000)).toBe(true);
  });

  test('never where heat was not changing, where that isn’t known, or where nothing ever changed', () => {
    const dayMs = 24 * 3600 * 1000;
    expect(isFrozen(held({ paceKPerS: 0.1 }), dayMs)).toBe(false);
    expect(isFrozen(held({ paceKPerS: null }), dayMs)).toBe(false);
    expect(isFrozen(held({ resolutionK: null }), dayMs)).toBe(false);
    expect(isFrozen(null, dayMs)).toBe(false);
  });
});
