/** The machine's monotonic clock, ms: the same for every process on it, Chromium's included. */
export const monotonicMs = () => Number(process.hrtime.bigint()) / 1e6;

/**
 * Calls `send(i)` for i = 0, 1, 2 … at `hz` until stopped, each up to `jitter` of a gap early or late, so that
 * it falls out of step with whatever else repeats. A late timer catches up: the rate holds.
 * @param {{ hz: number, jitter: number, send: (i: number) => void }} options
 */
export function pace({ hz, jitter, send }) {
  const random = seeded(20_260_301);
  const fromMs = monotonicMs();
  const dueMs = (i) => fromMs + ((i + 1 + (random() - 0.5) * 2 * jitter) * 1000) / hz;
  let sent = 0;
  let nextMs = dueMs(0);
  let timer;
  const go = () => {
    while (nextMs <= monotonicMs()) {
      send(sent);
      sent += 1;
      nextMs = dueMs(sent);
    }
    timer = setTimeout(go, Math.max(1, nextMs - monotonicMs()));
  };
  go();
  return {
    /** How many were sent. */
    get sent() {
      return sent;
    },
    stop: () => clearTimeout(timer),
  };
}

/** Numbers from 0 to 1, the same in each run (Lehmer's generator). */
function seeded(seed) {
  let value = seed;
  return () => {
    value = (value * 48_271) % 2_147_483_647;
    return value / 2_147_483_647;
  };
}
