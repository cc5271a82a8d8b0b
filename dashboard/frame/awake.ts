import { signal } from '@preact/signals';

/**
 * Whether the screen is kept awake. `missing`: this browser can't, or not at this address (it needs HTTPS or localhost).
 * `released`: the browser let go of it.
 */
export type Awake = 'asking' | 'awake' | 'refused' | 'missing' | 'released';

export const awake = signal<Awake>('asking');

let held: WakeLockSentinel | null = null;
let asking = false;

/** Keeps the screen awake for as long as the page is in sight, and asks again whenever the browser has let go of it. */
export function keepAwake(): void {
  if (!('wakeLock' in navigator)) {
    awake.value = 'missing';
    return;
  }
  document.addEventListener('visibilitychange', askAgain);
  window.addEventListener('pageshow', askAgain);
  // Some browsers grant it only in answer to the user.
  document.addEventListener('pointerup', askAgain, { capture: true, passive: true });
  document.addEventListener('keydown', askAgain, { capture: true, passive: true });
  askAgain();
}

const askAgain = (): void => void ask();

async function ask(): Promise<void> {
  if (document.hidden || asking || held !== null) return;
  asking = true;
  try {
    const lock = await navigator.wakeLock.request('screen');
    held = lock;
    awake.value = 'awake';
    lock.addEventListener('release', () => {
      held = null;
      awake.value = 'released';
    });
  } catch {
    awake.value = 'refused';
  } finally {
    asking = false;
  }
}
