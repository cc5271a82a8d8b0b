import { effect } from '@preact/signals';
import { isOpen, sayToDaemon } from '../link/daemon.ts';
import { nowMs } from '../parts/now.ts';
import { type Said, soundIsDue } from './said.ts';
import { soundState } from './sound.ts';

/**
 * Tells the daemon whether this page's sound is armed and runs. It looks whenever the page's clock moves on, which every
 * message of the daemon sees to, also in a hidden page; one that is frozen looks no more, and so counts no more.
 */
export function reportSound(): void {
  let said: Said | null = null;
  effect(() => {
    const armed = soundState.value === 'on';
    if (!isOpen.value) said = null;
    else if (soundIsDue(armed, said, nowMs.value) && sayToDaemon({ kind: 'sound', armed }))
      said = { armed, atMs: nowMs.value };
  });
}
