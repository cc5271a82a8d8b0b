import { computed } from '@preact/signals';
import { isLive, stream } from '../link/daemon.ts';
import { nowMs } from '../parts/now.ts';
import { type IronView, ironViews, keepUnchanged, type Lead, leadingIron } from './plate.ts';

/** The irons as they stand now, for the views. */

let known: readonly IronView[] = [];

export const irons = computed(() => {
  known = keepUnchanged(known, ironViews(stream.value, isLive.value, nowMs.value));
  return known;
});

let shown: Lead | null = null;

export const lead = computed(() => {
  shown = leadingIron(shown, irons.value, nowMs.value);
  return shown?.view ?? null;
});

/** The iron that is shown large, without its readings. */
export const leadIron = computed(() => lead.value?.iron ?? null);

/** Its hottest plate, which is what stands large. */
export const leadPlate = computed(() => lead.value?.plates[0] ?? null);

export const others = computed(() => irons.value.filter((one) => one.iron.id !== lead.value?.iron.id));

let othersKnown: readonly string[] = [];

/** Which those are: the same list while nothing but their readings changes. */
export const otherIds = computed(() => {
  const ids = others.value.map((one) => one.iron.id);
  if (ids.join('\n') !== othersKnown.join('\n')) othersKnown = ids;
  return othersKnown;
});
