import { isHot } from '../../shared/watch/hot.ts';
import type { Clock } from '../clock.ts';
import type { Watches } from './watches.ts';

/** A sign of somebody is told to the watches at most so often, ms: it is counted in minutes. */
const TOLD_MS = 20_000;

/** Tells every hot iron's watch that somebody is there. */
export class Presence {
  readonly #watches: Watches;
  readonly #clock: Clock;
  #toldMs = Number.NEGATIVE_INFINITY;

  constructor(watches: Watches, clock: Clock) {
    this.#watches = watches;
    this.#clock = clock;
  }

  sign(): void {
    const nowMs = this.#clock.nowMs();
    if (nowMs - this.#toldMs < TOLD_MS) return;
    this.#toldMs = nowMs;
    for (const watch of this.#watches.all) if (isHot(watch.state)) watch.take({ kind: 'presence' }, nowMs);
  }
}
