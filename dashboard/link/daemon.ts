import { batch, computed, effect, signal } from '@preact/signals';
import type { SoundFrame } from '../../shared/messages/hearing.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { isHidden, nowMs, pageMs } from '../parts/now.ts';
import { onceAFrame } from '../parts/once-a-frame.ts';
import { applyMessage, emptyStream, linkView, type StreamState } from './stream.ts';
import { StreamLink } from './stream-link.ts';

/** What the page knows of the daemon, for the views. */

const begunAtMs = pageMs();
const open = signal(false);
let connection: StreamLink | null = null;

/** What has been heard; readings are shown once a frame, however many come. */
let heard = emptyStream;
const NO_ALARMS: readonly AlarmLive[] = [];
export const stream = signal(emptyStream);
/** True where the daemon sent something that this page could not read. */
export const unreadable = signal(false);
/** The version of the program at the other end, as far as it has been heard. */
export const programVersion = signal<string | null>(null);

export const link = computed(() => linkView(stream.value, open.value, begunAtMs, nowMs.value));
export const live = computed(() => stream.value.live);
/** Parts of it that stay the same objects while readings come: what looks at these alone is then left as it is. */
export const situation = computed(() => live.value?.situation ?? null);
export const alarms = computed(() => live.value?.alarms ?? NO_ALARMS);
export const isLive = computed(() => link.value === 'live');
export const viewOnly = computed(() => situation.value?.viewOnly ?? false);

/** Whether the connection is open, whatever has been heard over it. */
export const isOpen = computed(() => open.value);

/** Says something over the stream's connection; false where there is none. */
export const sayToDaemon = (frame: SoundFrame): boolean => connection?.say(frame) ?? false;

/**
 * Begins to follow the daemon that this page came from.
 * @param hear told of every message, also of one that is overtaken before a frame shows it
 */
export function followDaemon(hear: (heard: StreamState) => void): void {
  const frame = onceAFrame(show);
  const scheme = location.protocol === 'https:' ? 'wss' : 'ws';
  const made = new StreamLink(`${scheme}://${location.host}/stream`, {
    opened: () => {
      open.value = true;
    },
    closed: () => {
      open.value = false;
    },
    message: (message) => {
      heard = applyMessage(heard, message, pageMs());
      hear(heard);
      if (message.kind === 'readings' && !isHidden.peek()) frame.ask();
      else show();
      if (message.kind === 'snapshot') {
        unreadable.value = false;
        programVersion.value = message.live.program.version;
      }
      if (heard.needsSnapshot) made.restart();
    },
    unreadable: (version) => {
      unreadable.value = true;
      if (version !== null) programVersion.value = version;
    },
    resumeAfter: () => {
      const { epoch, seq, needsSnapshot } = heard;
      return epoch === null || needsSnapshot ? null : { epoch, seq };
    },
  });
  connection = made;
  made.start();
  // A window that is covered gets no frames, but its clock goes on.
  effect(() => {
    if (nowMs.value >= 0) stream.value = heard;
  });
}

function show(): void {
  batch(() => {
    nowMs.value = pageMs();
    stream.value = heard;
  });
}
