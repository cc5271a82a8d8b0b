import { computed, effect, signal } from '@preact/signals';
import type { Cement } from '../../shared/cure/cement.ts';
import { cementListSchema } from '../../shared/messages/cure.ts';
import { isLive } from '../link/daemon.ts';
import { getJson } from '../link/get.ts';
import { oneAtATime } from '../link/read-again.ts';
import { keep } from '../parts/browser.ts';
import { byUse, lastUsed, readUsed } from './by-use.ts';
import { coats, coatsNowMs, coatsTold } from './coats.ts';

/** The cements that can be put on: read where coats are started. */

/** Null before they were read. */
const cements = signal<readonly Cement[] | null>(null);

/** This browser's own knowledge of what was used when: the daemon tells of coats that dry only. */
const NAME = 'cements-used';
const used = signal(readUsed(keep.read(NAME)));

export const cementsByUse = computed(() =>
  cements.value === null ? null : byUse(cements.value, coats.value, used.value),
);
export const lastCement = computed(() => lastUsed(cements.value ?? [], coats.value, used.value));

export function noteUsed(cement: string): void {
  const nowMs = coatsNowMs.peek();
  if (nowMs === null) return;
  used.value = { ...used.peek(), [cement]: nowMs };
  keep.write(NAME, JSON.stringify(used.peek()));
}

/** What could not be read stays as it was: it is read again at the next change. */
const read = oneAtATime(async () => {
  const got = await getJson('/api/cements', cementListSchema);
  if (got.ok) cements.value = got.value.cements;
});

/** Keeps them fresh for as long as they are needed. */
export const followCements = (): (() => void) =>
  effect(() => {
    if (coatsTold.value !== '' && isLive.value) read();
  });
