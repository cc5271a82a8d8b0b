import { scheduleStore } from './schedule/drafts.ts';

/** Whether anything that was typed in Setup waits to be saved. */
export const isUnsaved = scheduleStore.isUnsaved;
