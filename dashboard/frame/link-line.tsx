import { formatDuration } from '../../shared/units/time.ts';
import { linkWords } from '../../shared/words/page.ts';
import { link, stream } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { nowMs } from '../parts/now.ts';
import { timeOfDay } from '../parts/times.ts';

/** How the link to the daemon stands, in words. */
export const LinkLine = () => (
  <p class={`link link--${link.value}`} data-testid="link" data-link={link.value}>
    {linkText()}
  </p>
);

function linkText(): string {
  if (link.value === 'live') return linkWords.live;
  if (link.value === 'connecting') return linkWords.connecting;
  const state = stream.value;
  const lostUtcMs = state.heardAtMs === null ? null : daemonUtcMs(state, state.heardAtMs);
  if (state.heardAtMs === null || lostUtcMs === null) return linkWords.neverReached;
  return linkWords.lost(timeOfDay(lostUtcMs), formatDuration(nowMs.value - state.heardAtMs));
}
