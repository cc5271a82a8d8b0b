import { computed, signal } from '@preact/signals';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { nowMs, pageMs } from '../parts/now.ts';
import { coats } from './coats.ts';
import { inOrder } from './in-order.ts';

/** So long after the last press coats stay in their places, ms. */
const HOLDS_MS = 5000;

const tappedAtMs = signal(Number.NEGATIVE_INFINITY);
const isTapping = computed(() => nowMs.value - tappedAtMs.value < HOLDS_MS);

export const noteTap = (): void => {
  tappedAtMs.value = pageMs();
};

let shown: readonly string[] = [];

/** The coats as they are listed: those that come first, first; while somebody taps, as they stood. */
export const listedCoats = computed((): readonly CoatAnswer[] => {
  const listed = isTapping.value ? inOrder(coats.value, shown) : coats.value;
  shown = listed.map(({ id }) => id);
  return listed;
});
