import { signal } from '@preact/signals';

/** The page's own clock, ms: monotonic, so that a wall clock that is wrong or set doesn't matter. */
export const pageMs = (): number => performance.now();

/** The page's clock as views see it: it moves on a few times a second, and at once when the page is shown again. */
export const nowMs = signal(pageMs());

const STEP_MS = 250;

const step = (): void => {
  nowMs.value = pageMs();
};

export function startClock(): void {
  setInterval(step, STEP_MS);
  document.addEventListener('visibilitychange', step);
  window.addEventListener('pageshow', step);
}
