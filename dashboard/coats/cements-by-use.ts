import { computed, signal } from '@preact/signals';
import { cements } from '../cure/cements.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { keep } from '../parts/browser.ts';
import { byUse, lastUsed, readUsed } from './by-use.ts';
import { coats } from './coats.ts';

/** The cements that can be put on, the one used last first. */

/** This browser's own knowledge of what was used when: the daemon tells of coats that dry only. */
const NAME = 'cements-used';
const used = signal(readUsed(keep.read(NAME)));

/** Null before the cements were read. */
export const cementsByUse = computed(() =>
  cements.value === null ? null : byUse(cements.value, coats.value, used.value),
);
/** Null: none was ever used, as far as is known here. */
export const lastCement = computed(() => lastUsed(cements.value ?? [], coats.value, used.value));

export function noteUsed(cement: string): void {
  const nowMs = coatsNowMs.peek();
  if (nowMs === null) return;
  used.value = { ...used.peek(), [cement]: nowMs };
  keep.write(NAME, JSON.stringify(used.peek()));
}
