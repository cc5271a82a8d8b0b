import { computed, signal } from '@preact/signals';
import { type AirAnswer, airAnswerSchema } from '../../../shared/messages/cure.ts';
import { stream } from '../../link/daemon.ts';
import { daemonUtcMs } from '../../link/stream.ts';
import { nowMs } from '../../parts/now.ts';
import { get } from '../ask-daemon.ts';

/** The air of the shop as the daemon has it. */

/** Null before it was read. */
export const air = signal<AirAnswer | null>(null);
/** Why it could not be read; empty while all is well. */
export const airTrouble = signal('');

export async function readAir(): Promise<void> {
  const got = await get('/api/air', airAnswerSchema);
  airTrouble.value = got.kind === 'done' ? '' : got.why;
  if (got.kind === 'done') air.value = got.value;
}

const MINUTE_MS = 60_000;

/** The daemon's time to the minute; null while it isn't known. What stands by it is rendered once a minute. */
export const minuteMs = computed(() => {
  const utcMs = daemonUtcMs(stream.value, nowMs.value);
  return utcMs === null ? null : Math.floor(utcMs / MINUTE_MS) * MINUTE_MS;
});
