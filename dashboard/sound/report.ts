import { effect } from '@preact/signals';
import { SOUND_SAID_EVERY_MS } from '../../shared/messages/hearing.ts';
import { isOpen, sayToDaemon } from '../link/daemon.ts';
import { nowMs } from '../parts/now.ts';
import { soundState } from './sound.ts';

/** What was last said to the daemon over this connection. */
export interface Said {
  readonly armed: boolean;
  readonly atMs: number;
}

/** Whether the sound has to be said: at every change, and again while it runs. A connection begins as without sound. */
export function soundIsDue(armed: boolean, said: Said | null, nowMs: number): boolean {
  if (armed !== (said?.armed ?? false)) return true;
  return armed && said !== null && nowMs - said.atMs >= SOUND_SAID_EVERY_MS;
}

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
