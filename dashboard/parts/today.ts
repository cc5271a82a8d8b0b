import { computed } from '@preact/signals';
import { stream } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { isoDay } from '../setup/day.ts';
import { nowMs } from './now.ts';

/** The day that it is by the daemon's clock, as ISO 8601 writes it; null while that isn't known. */
export const today = computed(() => {
  const utcMs = daemonUtcMs(stream.value, nowMs.value);
  return utcMs === null ? null : isoDay(utcMs);
});
