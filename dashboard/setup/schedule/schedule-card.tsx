import { useRef, useState } from 'preact/hooks';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { checkForm } from './check.ts';
import { Conflict } from './conflict.tsx';
import { type Draft, drafts, dropDraft, formNow, type } from './drafts.ts';
import { isSaving, newerThan, said, save, say, takeUp, triedToSave } from './saving.ts';
import { ScheduleFields } from './schedule-fields.tsx';
import { Versions } from './versions.tsx';

/** One schedule: how it stands, its fields, and what can be done with what was typed. */
export function ScheduleCard({ schedule }: { readonly schedule: HeatSchedule }) {
  const { id } = schedule;
  const card = useRef<HTMLElement>(null);
  const draft = drafts.value[id];
  const newest = draft === undefined ? null : newerThan(draft);
  const form = formNow(schedule);
  const { errors } = checkForm(form);
  const saveAll = async (): Promise<void> => {
    const fine = await save(id);
    if (!fine) requestAnimationFrame(() => toFirstWrong(card.current));
  };
  return (
    <section class="schedule" ref={card} aria-label={form.name} data-testid="schedule" data-id={id}>
      {draft !== undefined && newest !== null ? <Conflict draft={draft} newest={newest} /> : null}
      <ScheduleFields
        form={form}
        schedule={schedule}
        errors={errors}
        pointOutAll={triedToSave.value.has(id)}
        disabled={viewOnly.value}
        onChange={(changed) => {
          if (said.peek()[id] !== '') say(id, '');
          type(schedule, changed);
        }}
      />
      <SaveBar schedule={schedule} draft={draft} conflict={newest !== null} onSave={() => void saveAll()} />
      {draft === undefined && !viewOnly.value ? <Versions schedule={schedule} /> : null}
    </section>
  );
}

const toFirstWrong = (card: HTMLElement | null): void =>
  card?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();

interface SaveBarProps {
  readonly schedule: HeatSchedule;
  readonly draft: Draft | undefined;
  readonly conflict: boolean;
  readonly onSave: () => void;
}

/** Stays in sight while something is unsaved, and says what came of saving. */
function SaveBar({ schedule: { id }, draft, conflict, onSave }: SaveBarProps) {
  const [dropped, setDropped] = useState<Draft | null>(null);
  const drop = (): void => {
    setDropped(draft ?? null);
    dropDraft(id);
    say(id, scheduleWords.dropped);
  };
  const take = (): void => {
    if (dropped !== null) takeUp(id, dropped);
    setDropped(null);
  };
  const sentence = said.value[id] ?? '';
  const isNew = draft?.base.version === 0;
  return (
    <div class={draft === undefined ? 'save-bar' : 'save-bar save-bar--unsaved'}>
      <p role="status" data-testid="schedule-said">
        {sentence !== ''
          ? sentence
          : draft === undefined
            ? ''
            : isNew
              ? scheduleWords.newNote
              : scheduleWords.unsaved}
      </p>
      {draft === undefined || conflict ? null : (
        <>
          <Target main disabled={isSaving.value} testId="save" onPress={onSave}>
            {scheduleWords.save(draft.base.version + 1)}
          </Target>
          <Target onPress={drop}>{scheduleWords.drop}</Target>
        </>
      )}
      {draft === undefined && dropped !== null && sentence === scheduleWords.dropped ? (
        <Target onPress={take}>{scheduleWords.takeBack}</Target>
      ) : null}
    </div>
  );
}
