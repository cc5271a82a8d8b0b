import { SOUND_SAID_EVERY_MS } from '../../shared/messages/hearing.ts';

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
