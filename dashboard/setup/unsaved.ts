import { computed } from '@preact/signals';
import { cementStore } from './cement/drafts.ts';
import { scheduleStore } from './schedule/drafts.ts';

/** Whether anything that was typed in Setup waits to be saved. */
export const isUnsaved = computed(() => scheduleStore.isUnsaved.value || cementStore.isUnsaved.value);
