import { computed } from '@preact/signals';
import { stream } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { isoDay } from '../parts/day.ts';
import { nowMs } from '../parts/now.ts';

/** The daemon's time in steps, so that what stands by it isn't made anew with each reading; null while it isn't known. */

const steps = (stepMs: number) =>
  computed(() => {
    const utcMs = daemonUtcMs(stream.value, nowMs.value);
    return utcMs === null ? null : Math.floor(utcMs / stepMs) * stepMs;
  });

/** In steps of some seconds, for texts. */
export const coatsNowMs = steps(5000);

/** To the minute, for what is drawn or filled in. */
export const minuteMs = steps(60_000);

/** The day, as ISO 8601 writes it. */
export const today = computed(() => (minuteMs.value === null ? null : isoDay(minuteMs.value)));
