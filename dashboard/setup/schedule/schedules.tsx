import { signal } from '@preact/signals';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { Pick } from '../fields/field.tsx';
import { scheduleStore } from './drafts.ts';
import { beginNew } from './saving.ts';
import { ScheduleCard } from './schedule-card.tsx';
import './schedule.css';

const chosen = signal<string | null>(null);

/** The schedules that exist, and those that are only typed yet: these by the name that is being typed. */
const all = (): readonly HeatSchedule[] =>
  scheduleStore
    .list()
    .map((one) => (one.version > 0 ? one : { ...one, name: scheduleStore.formNow(one).name }));

/** Heat schedules: one of them with its fields. */
export function Schedules() {
  const list = all();
  const shown = list.find((one) => one.id === chosen.value) ?? list[0];
  if (shown === undefined) return null;
  return (
    <>
      <div class="schedule-choice">
        {list.length > 1 ? (
          <Pick
            label={scheduleWords.choose}
            options={list.map((one) => [one.id, one.name] as const)}
            chosen={shown.id}
            onPick={(id) => {
              chosen.value = id;
            }}
          />
        ) : null}
        {viewOnly.value ? null : (
          <Target
            onPress={() => {
              chosen.value = beginNew(shown);
            }}
          >
            {scheduleWords.add}
          </Target>
        )}
      </div>
      <ScheduleCard key={shown.id} schedule={shown} />
    </>
  );
}
