import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { scheduleVersionsSchema } from '../../../shared/messages/settings.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { randomId } from '../../link/ids.ts';
import { get } from '../ask-daemon.ts';
import { schedulePath, scheduleStore } from './drafts.ts';
import { valuesOf } from './form.ts';

/** What is made of schedules that exist: new ones, and versions that are put back. */

/** Makes a new version with the values of an older one. */
export const putBack = (newest: HeatSchedule, older: HeatSchedule): Promise<boolean> =>
  scheduleStore.write(newest.id, valuesOf(older), newest.version);

/** Begins a new schedule with the values of one that exists. It has no source: that is for its own manual. */
export function beginNew(from: HeatSchedule): string {
  const id = `schedule-${randomId().slice(0, 12)}`;
  const name = scheduleWords.newName(from.name).slice(0, 80);
  scheduleStore.begin({ ...from, id, version: 0, name, source: null });
  return id;
}

/** Every version of a schedule, the newest first; null where they can't be read. */
export async function versionsOf(id: string): Promise<readonly HeatSchedule[] | null> {
  const answer = await get(`${schedulePath(id)}/versions`, scheduleVersionsSchema);
  return answer.kind === 'done' ? answer.value.versions : null;
}
