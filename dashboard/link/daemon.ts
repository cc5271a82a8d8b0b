import { computed, signal } from '@preact/signals';
import type { SoundFrame } from '../../shared/messages/hearing.ts';
import { nowMs, pageMs } from '../parts/now.ts';
import { applyMessage, emptyStream, linkView } from './stream.ts';
import { StreamLink } from './stream-link.ts';

/** What the page knows of the daemon, for the views. */

const begunAtMs = pageMs();
const open = signal(false);
let connection: StreamLink | null = null;

export const stream = signal(emptyStream);
/** True where the daemon sent something that this page could not read. */
export const unreadable = signal(false);
/** The version of the program at the other end, as far as it has been heard. */
export const programVersion = signal<string | null>(null);

export const link = computed(() => linkView(stream.value, open.value, begunAtMs, nowMs.value));
export const live = computed(() => stream.value.live);
export const isLive = computed(() => link.value === 'live');
export const viewOnly = computed(() => live.value?.situation.viewOnly ?? false);

/** Whether the connection is open, whatever has been heard over it. */
export const isOpen = computed(() => open.value);

/** Says something over the stream's connection; false where there is none. */
export const sayToDaemon = (frame: SoundFrame): boolean => connection?.say(frame) ?? false;

/** Begins to follow the daemon that this page came from. */
export function followDaemon(): void {
  const scheme = location.protocol === 'https:' ? 'wss' : 'ws';
  const made = new StreamLink(`${scheme}://${location.host}/stream`, {
    opened: () => {
      open.value = true;
    },
    closed: () => {
      open.value = false;
    },
    message: (message) => {
      const atMs = pageMs();
      nowMs.value = atMs;
      stream.value = applyMessage(stream.value, message, atMs);
      if (message.kind === 'snapshot') {
        unreadable.value = false;
        programVersion.value = message.live.program.version;
      }
      if (stream.value.needsSnapshot) made.restart();
    },
    unreadable: (version) => {
      unreadable.value = true;
      if (version !== null) programVersion.value = version;
    },
    resumeAfter: () => {
      const { epoch, seq, needsSnapshot } = stream.value;
      return epoch === null || needsSnapshot ? null : { epoch, seq };
    },
  });
  connection = made;
  made.start();
}
