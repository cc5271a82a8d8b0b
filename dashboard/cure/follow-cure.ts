import { computed, effect } from '@preact/signals';
import { isLive, live } from '../link/daemon.ts';
import { oneAtATime } from '../link/read-again.ts';

/** What the stream says of cements, coats and the air: when it changes, what was read of them is old. */
const told = computed(() => {
  const now = live.value;
  if (now === null) return '';
  const { settingsRevision, work } = now.situation;
  return `${now.program.epoch} ${settingsRevision} ${work.coatRevision}`;
});

/** Reads now, and again whenever it has changed; returns a function that ends it. */
export function followCure(read: () => Promise<void>): () => void {
  const readNow = oneAtATime(read);
  return effect(() => {
    if (told.value !== '' && isLive.value) readNow();
  });
}
