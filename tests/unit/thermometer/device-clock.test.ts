import { describe, expect, test } from 'vitest';
import {
  DEVICE_CLOCK_WRAP_MS,
  type DeviceClock,
  placeInTime,
} from '../../../shared/thermometer/device-clock.ts';
import { drawer } from '../watch/support/worked-iron.ts';

interface Line {
  readonly madeMs: number;
  readonly deviceMs: number;
  readonly hostMs: number;
}

/** Errors of `atMs` against when each line was truly made, ms; negative: placed too early. */
function errors(lines: readonly Line[]): { readonly atMs: number; readonly errorMs: number }[] {
  let clock: DeviceClock | undefined;
  return lines.map(({ madeMs, deviceMs, hostMs }) => {
    const timed = placeInTime(clock, deviceMs, hostMs);
    clock = timed.clock;
    expect(timed.atMs).toBeLessThanOrEqual(hostMs);
    return { atMs: timed.atMs, errorMs: timed.atMs - madeMs };
  });
}

interface Device {
  readonly periodMs: number;
  readonly count: number;
  /** How much faster than the host's its clock runs, as a share. */
  readonly fast: number;
  readonly bootMs?: number;
}

/** Lines that arrive 0 to 80 ms late, never one before the other. */
function jittered({ periodMs, count, fast, bootMs = 0 }: Device): Line[] {
  const draw = drawer(count);
  let before = 0;
  return Array.from({ length: count }, (_, i) => {
    const madeMs = 1000 + i * periodMs;
    before = Math.max(before, Math.floor(madeMs + draw(0, 80)));
    const deviceMs = Math.floor(bootMs + (madeMs - 1000) * (1 + fast)) % DEVICE_CLOCK_WRAP_MS;
    return { madeMs, deviceMs, hostMs: before };
  });
}

const settledErrors = (device: Device): number[] =>
  errors(jittered(device))
    .slice(Math.ceil(20_000 / device.periodMs))
    .map(({ errorMs }) => Math.abs(errorMs));

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('the host’s jitter is taken out (lines 0 to 80 ms late, 40 ms on average)', () => {
  test.each([
    ['a crystal, 10 Hz', { periodMs: 100, count: 12_000, fast: 50e-6 }, 12, 3],
    ['a slow crystal, 10 Hz', { periodMs: 100, count: 12_000, fast: -200e-6 }, 12, 4],
    ['a fast ceramic resonator, 10 Hz', { periodMs: 100, count: 12_000, fast: 0.005 }, 40, 25],
    ['a slow ceramic resonator, 10 Hz', { periodMs: 100, count: 12_000, fast: -0.005 }, 110, 80],
    ['a crystal, a line a second', { periodMs: 1000, count: 3600, fast: 50e-6 }, 60, 10],
  ])('%s', (_, device, mostMs, meanMs) => {
    const left = settledErrors(device);
    expect(Math.max(...left)).toBeLessThan(mostMs);
    expect(mean(left)).toBeLessThan(meanMs);
  });
});

test('the clock wraps at 2^32 without a break', () => {
  const lines = jittered({ periodMs: 100, count: 600, fast: 0, bootMs: DEVICE_CLOCK_WRAP_MS - 30_000 });
  expect(lines.some((l, i) => l.deviceMs < (lines[i - 1]?.deviceMs ?? 0))).toBe(true);
  for (const { errorMs } of errors(lines).slice(200)) expect(Math.abs(errorMs)).toBeLessThan(12);
});

describe('a device that starts anew', () => {
  const before = jittered({ periodMs: 100, count: 300, fast: 0, bootMs: 5_000_000 });

  test('after a reset time goes on from when the line arrived', () => {
    const again = before.map((l) => ({
      madeMs: l.madeMs + 32_000,
      deviceMs: l.deviceMs - 5_000_000,
      hostMs: l.hostMs + 32_000,
    }));
    const placed = errors([...before, ...again]);
    expect(placed[300]?.atMs).toBe(again[0]?.hostMs);
    for (const { errorMs } of placed.slice(500)) expect(Math.abs(errorMs)).toBeLessThan(12);
  });

  test('a clock that stood still while the device slept is taken up afresh, not placed in the past', () => {
    const slept = before.map((l) => ({
      madeMs: l.madeMs + 630_000,
      deviceMs: l.deviceMs + 30_000,
      hostMs: l.hostMs + 630_000,
    }));
    expect(Math.abs(errors([...before, ...slept])[300]?.errorMs ?? 0)).toBeLessThanOrEqual(80);
  });
});

test('lines of two probes of one device may come a little out of order', () => {
  const lines = jittered({ periodMs: 100, count: 300, fast: 0, bootMs: 9000 }).flatMap((l) => [
    l,
    { ...l, madeMs: l.madeMs - 5, deviceMs: l.deviceMs - 5 },
  ]);
  for (const { errorMs } of errors(lines).slice(300)) expect(Math.abs(errorMs)).toBeLessThan(12);
});

test('lines held up by the host for seconds are placed where they were made', () => {
  const lines = jittered({ periodMs: 100, count: 300, fast: 0 });
  const heldUp = lines.map((l, i) => (i >= 200 && i < 230 ? { ...l, hostMs: lines[230]?.hostMs ?? 0 } : l));
  for (const { errorMs } of errors(heldUp).slice(200)) expect(Math.abs(errorMs)).toBeLessThan(12);
});
