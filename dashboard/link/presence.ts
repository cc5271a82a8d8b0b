import { pageMs } from '../parts/now.ts';
import { isLive, viewOnly } from './daemon.ts';

/** Tells the daemon that somebody is at this page: a hot iron that nobody is near is alarmed of. */

/** No more often than this, ms: it has to be far shorter than the time after which an iron counts as left alone. */
const EVERY_MS = 20_000;

const signs = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart'] as const;

export function reportPresence(): void {
  let saidAtMs = Number.NEGATIVE_INFINITY;
  const notice = (event: Event): void => {
    // What a script makes up is nobody's sign.
    if (!event.isTrusted || !isLive.peek() || viewOnly.peek() || pageMs() - saidAtMs < EVERY_MS) return;
    saidAtMs = pageMs();
    void tell();
  };
  for (const sign of signs) document.addEventListener(sign, notice, { capture: true, passive: true });
}

/** One that does not arrive is of no use later; the next sign tells again. */
async function tell(): Promise<void> {
  try {
    await fetch('/api/presence', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    });
  } catch {
    // The page says already that the daemon can't be reached.
  }
}
