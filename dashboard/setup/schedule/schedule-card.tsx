import { useRef } from 'preact/hooks';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Conflict } from '../versioned/conflict-note.tsx';
import { SaveBar } from '../versioned/save-bar.tsx';
import { saveOrPointOut } from '../versioned/save-or-point-out.ts';
import { scheduleStore as store } from './drafts.ts';
import { placeTexts } from './place-text.ts';
import { ScheduleFields } from './schedule-fields.tsx';
import { Versions } from './versions.tsx';

/** One schedule: how it stands, its fields, and what can be done with what was typed. */
export function ScheduleCard({ schedule }: { readonly schedule: HeatSchedule }) {
  const { id } = schedule;
  const card = useRef<HTMLElement>(null);
  const draft = store.drafts.value[id];
  const newest = draft === undefined ? null : store.newerThan(draft);
  const form = store.formNow(schedule);
  const { errors } = store.check(form);
  return (
    <section class="schedule" ref={card} aria-label={form.name} data-testid="schedule" data-id={id}>
      {draft !== undefined && newest !== null ? (
        <Conflict store={store} texts={placeTexts} draft={draft} newest={newest} />
      ) : null}
      <ScheduleFields
        id={id}
        form={form}
        schedule={schedule}
        errors={errors}
        pointOutAll={store.triedToSave.value.has(id)}
        disabled={viewOnly.value}
        onChange={(changed) => store.type(schedule, changed)}
      />
      <SaveBar
        id={id}
        store={store}
        conflict={newest !== null}
        onSave={() => void saveOrPointOut(() => store.save(id), card)}
        testId="schedule-said"
      />
      {draft === undefined && !viewOnly.value ? <Versions schedule={schedule} /> : null}
    </section>
  );
}
