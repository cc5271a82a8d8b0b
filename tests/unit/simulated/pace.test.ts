import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { monotonicClock, SteppedClock } from '../../../daemon/clock.ts';
import { paceFor } from '../../../daemon/probe/simulated/pace.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the pace of the simulated world', () => {
  it('follows a clock that goes by itself, from when the world begins', () => {
    const clock = monotonicClock();
    vi.advanceTimersByTime(500);
    const pace = paceFor(clock, 1)();
    expect(pace.reach()).toBe(0);
    vi.advanceTimersByTime(3000);
    expect(pace.reach()).toBe(3000);
  });

  it('pushes a stepped clock at its speed, never past the world’s time', () => {
    const clock = new SteppedClock();
    clock.advanceTo(700);
    const pace = paceFor(clock, 10)();
    vi.advanceTimersByTime(20);
    expect(pace.reach()).toBeCloseTo(200, 6);
    expect(clock.nowMs()).toBe(700);
    pace.at(150);
    expect(clock.nowMs()).toBe(850);
  });

  it('stalls with the host: a pause counts 250 ms of real time at most', () => {
    const pace = paceFor(new SteppedClock(), 10)();
    vi.advanceTimersByTime(60_000);
    expect(pace.reach()).toBe(2500);
    vi.advanceTimersByTime(20);
    expect(pace.reach()).toBeCloseTo(2700, 6);
  });

  it('refuses a speed that its clock can’t go at', () => {
    expect(() => paceFor(monotonicClock(), 2)).toThrow(/speed 2 needs a clock that can be pushed/);
    for (const speed of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => paceFor(new SteppedClock(), speed)).toThrow(RangeError);
  });
});
