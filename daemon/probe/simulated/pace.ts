import { type Clock, SteppedClock } from '../../clock.ts';

/** How the simulated world's time goes with the host's. All times are ms since the world began. */
export interface Pace {
  /** How far the world has come by now; asked once a turn. */
  reach(): number;
  /** A line of the world's time `tMs` is about to come in. */
  at(tMs: number): void;
  /** A line that came in by more than this before the world's time is lost: a port keeps no more. */
  readonly keptMs: number;
}

/** The longest turn of real time that a driven world goes on by: a stalled host stalls the world. */
const LONGEST_TURN_MS = 250;
/** After a longer pause of the host (a suspend) what was said meanwhile is gone, as on a port that nobody reads. */
const PORT_KEEPS_MS = 10_000;

/**
 * Follows a clock that goes by itself; pushes a `SteppedClock` at `speed` times the real time.
 * Call what it returns when the world begins.
 * @throws RangeError for another speed than 1 with a clock that goes by itself, or one that isn't above 0.
 */
export function paceFor(clock: Clock, speed: number): () => Pace {
  if (!(speed > 0 && Number.isFinite(speed))) throw new RangeError(`speed ${speed}: must be above 0`);
  if (clock instanceof SteppedClock) return () => driven(clock, speed);
  if (speed === 1) return () => followed(clock);
  throw new RangeError(`speed ${speed} needs a clock that can be pushed`);
}

function followed(clock: Clock): Pace {
  const beganMs = clock.nowMs();
  return { reach: () => clock.nowMs() - beganMs, at: () => undefined, keptMs: PORT_KEEPS_MS };
}

function driven(clock: SteppedClock, speed: number): Pace {
  const beganMs = clock.nowMs();
  let lastRealMs = performance.now();
  let worldMs = 0;
  return {
    reach: () => {
      const realMs = performance.now();
      worldMs += Math.min(realMs - lastRealMs, LONGEST_TURN_MS) * speed;
      lastRealMs = realMs;
      return worldMs;
    },
    at: (tMs) => clock.advanceTo(beganMs + tMs),
    keptMs: Number.POSITIVE_INFINITY,
  };
}
