/**
 * Turns a device's own clock into time of the watch, free of the host's jitter. A line arrives late by a delay that
 * is never negative, so the smallest difference seen between the two clocks is the best one.
 */
export interface DeviceClock {
  readonly lastDeviceMs: number;
  /** Device time with wraps and resets taken out, ms. */
  readonly runningMs: number;
  /** Watch time minus running device time, ms. */
  readonly offsetMs: number;
  readonly lastHostMs: number;
}

const WRAP = 2 ** 32;
/** A device clock may run slow by this much and is still followed: 200 ppm, a poor crystal (our own allowance). */
const DRIFT = 200e-6;
/** A device that claims to have gone on this much further than the host did was reset, ms. */
const RESET_MS = 5000;

export interface Timed {
  readonly clock: DeviceClock;
  /** When the line was made, ms of the watch's clock; never later than it arrived. */
  readonly atMs: number;
  readonly reset: boolean;
}

/**
 * Places one line in time.
 * @param deviceMs the device's clock, 0 to 2^32 - 1, wrapping
 * @param hostMs when the line arrived, ms of the watch's clock, never decreasing
 */
export function placeInTime(clock: DeviceClock | undefined, deviceMs: number, hostMs: number): Timed {
  if (clock === undefined) return startClock(deviceMs, hostMs, false);
  const elapsedMs = hostMs - clock.lastHostMs;
  const stepMs = (deviceMs - clock.lastDeviceMs + WRAP) % WRAP;
  if (stepMs > elapsedMs + RESET_MS) return startClock(deviceMs, hostMs, true);
  const runningMs = clock.runningMs + stepMs;
  const offsetMs = Math.min(hostMs - runningMs, clock.offsetMs + DRIFT * elapsedMs);
  return {
    clock: { lastDeviceMs: deviceMs, runningMs, offsetMs, lastHostMs: hostMs },
    atMs: runningMs + offsetMs,
    reset: false,
  };
}

function startClock(deviceMs: number, hostMs: number, reset: boolean): Timed {
  const clock = { lastDeviceMs: deviceMs, runningMs: 0, offsetMs: hostMs, lastHostMs: hostMs };
  return { clock, atMs: hostMs, reset };
}
