import { signal } from '@preact/signals';

/** The page's own clock, ms: monotonic, so that a wall clock that is wrong or set doesn't matter. */
export const pageMs = (): number => performance.now();

/** The tablet's own clock, ms since 1970: it may be wrong by hours, so only differences of it are of use. */
export const tabletMs = (): number => Date.now();

/** The page's clock as views see it: it moves on a few times a second, and at once when the page is shown again. */
export const nowMs = signal(pageMs());

/** Whether nobody can see the page: its window is covered or another tab is in front. */
export const isHidden = signal(false);

const STEP_MS = 250;

const step = (): void => {
  nowMs.value = pageMs();
  isHidden.value = document.hidden;
};

export function startClock(): void {
  step();
  setInterval(step, STEP_MS);
  document.addEventListener('visibilitychange', step);
  window.addEventListener('pageshow', step);
}
