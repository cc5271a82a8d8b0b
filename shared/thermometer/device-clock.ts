/**
 * Turns a device's own clock into time of the watch, free of the host's jitter. A line arrives late by a delay that
 * is never negative, so the smallest difference seen between the two clocks is the best one. Only the last 10 to 20 s
 * are searched for it, so that a device clock of any pace is followed: one that runs slow by 0.5 %, as with a ceramic
 * resonator, is then wrong by 0.1 s at most.
 */
export interface DeviceClock {
  readonly lastDeviceMs: number;
  /** Device time with wraps and resets taken out, ms. */
  readonly runningMs: number;
  readonly lastHostMs: number;
  /** The smallest watch time minus running device time since `sinceMs`, and in the span before that, ms. */
  readonly sinceMs: number;
  readonly leastMs: number;
  readonly leastBeforeMs: number;
}

/** The device clock wraps here, ms. */
export const DEVICE_CLOCK_WRAP_MS = 2 ** 32;
const SPAN_MS = 10_000;
/** Two clocks that have come apart by more than this since the last line: the device's was reset, or stood still, ms. */
const ASTRAY_MS = 5000;
/** Lines of several probes of one device may come out of order by so much, ms. */
const SHUFFLED_MS = 200;

export interface Timed {
  readonly clock: DeviceClock;
  /** When the line was made, ms of the watch's clock; never later than it arrived. */
  readonly atMs: number;
}

/**
 * Places one line in time.
 * @param deviceMs the device's clock, 0 to 2^32 - 1, wrapping
 * @param hostMs when the line arrived, ms of the watch's clock, never decreasing
 */
export function placeInTime(clock: DeviceClock | undefined, deviceMs: number, hostMs: number): Timed {
  if (clock === undefined) return startClock(deviceMs, hostMs);
  const forwardMs = (deviceMs - clock.lastDeviceMs + DEVICE_CLOCK_WRAP_MS) % DEVICE_CLOCK_WRAP_MS;
  const backMs = DEVICE_CLOCK_WRAP_MS - forwardMs;
  const stepMs = backMs <= SHUFFLED_MS ? -backMs : forwardMs;
  const elapsedMs = hostMs - clock.lastHostMs;
  if (stepMs > elapsedMs + ASTRAY_MS) return startClock(deviceMs, hostMs);
  const after = follow(clock, stepMs, hostMs);
  const atMs = after.runningMs + Math.min(after.leastMs, after.leastBeforeMs);
  if (hostMs - atMs > ASTRAY_MS) return startClock(deviceMs, hostMs);
  return { clock: { ...after, lastDeviceMs: deviceMs }, atMs };
}

function follow(clock: DeviceClock, stepMs: number, hostMs: number): DeviceClock {
  const runningMs = clock.runningMs + stepMs;
  const differenceMs = hostMs - runningMs;
  const common = { ...clock, runningMs, lastHostMs: hostMs };
  const ageMs = hostMs - clock.sinceMs;
  if (ageMs < SPAN_MS) return { ...common, leastMs: Math.min(clock.leastMs, differenceMs) };
  const leastBeforeMs = ageMs < 2 * SPAN_MS ? clock.leastMs : differenceMs;
  return { ...common, sinceMs: hostMs, leastMs: differenceMs, leastBeforeMs };
}

function startClock(deviceMs: number, hostMs: number): Timed {
  const clock = {
    lastDeviceMs: deviceMs,
    runningMs: 0,
    lastHostMs: hostMs,
    sinceMs: hostMs,
    leastMs: hostMs,
    leastBeforeMs: hostMs,
  };
  return { clock, atMs: hostMs };
}
