import { formatDuration } from '../../shared/units/time.ts';
import { stream } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { nowMs } from '../parts/now.ts';

/** How long ago a moment of the daemon's clock was, to the second; empty while that clock isn't known. */
export function agoText(utcMs: number): string {
  const now = daemonUtcMs(stream.value, nowMs.value);
  return now === null ? '' : formatDuration(now - utcMs);
}
