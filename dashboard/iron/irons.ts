import { computed } from '@preact/signals';
import { isLive, stream } from '../link/daemon.ts';
import { nowMs } from '../parts/now.ts';
import { ironViews, leadingIron } from './plate.ts';

/** The irons as they stand now, for the views. */

export const irons = computed(() => ironViews(stream.value, isLive.value, nowMs.value));

let leadId: string | null = null;

export const lead = computed(() => {
  const view = leadingIron(leadId, irons.value);
  leadId = view?.iron.id ?? null;
  return view;
});

export const others = computed(() => irons.value.filter((one) => one.iron.id !== lead.value?.iron.id));
