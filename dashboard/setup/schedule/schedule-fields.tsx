import { useRef } from 'preact/hooks';
import { type HeatSchedule, isConfirmed, USUAL_REST_LIMIT_S } from '../../../shared/heat/schedule.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { randomId } from '../../link/ids.ts';
import { dayAndTime } from '../../parts/day.ts';
import { useFocusKept } from '../../parts/focus-kept.ts';
import { Target } from '../../parts/target.tsx';
import { Field } from '../fields/field.tsx';
import { readTemperature } from '../fields/number.ts';
import { type FormParts, type FormPartsProps, useFormParts } from '../versioned/form-parts.ts';
import { SourceNote } from '../versioned/source-note.tsx';
import { type ScheduleForm, withNewStage } from './form.ts';
import { ShrinkFields } from './shrink-fields.tsx';
import { StageFields } from './stage-fields.tsx';

interface ScheduleFieldsProps extends FormPartsProps<ScheduleForm> {
  readonly schedule: HeatSchedule;
}

export function ScheduleFields({ schedule, ...props }: ScheduleFieldsProps) {
  const parts = useFormParts(props);
  return (
    <div class="schedule-fields">
      <Source parts={parts} schedule={schedule} />
      <Limits parts={parts} />
      <Stages parts={parts} />
      <ShrinkFields parts={parts} />
      <div class="field-row">
        <TextField parts={parts} field="name" label={scheduleWords.name} />
        <TextField parts={parts} field="fabric" label={scheduleWords.fabric} />
      </div>
    </div>
  );
}

type Parts = FormParts<ScheduleForm>;
type TextKey = 'name' | 'fabric' | 'limitStanding' | 'manual' | 'page';

interface TextFieldProps {
  readonly parts: Parts;
  readonly field: TextKey;
  readonly label: string;
}

const TextField = ({ parts, field, label }: TextFieldProps) => (
  <Field
    id={parts.idOf(field)}
    label={label}
    text={parts.form[field]}
    error={parts.errorOf(field)}
    disabled={parts.disabled}
    onText={(text) => parts.change({ ...parts.form, [field]: text })}
    onDone={() => parts.left(field)}
  />
);

const confirmedText = (schedule: HeatSchedule): string | null =>
  isConfirmed(schedule)
    ? `${scheduleWords.confirmed(schedule.source?.manual ?? '', schedule.source?.page ?? '')} ${scheduleWords.version(schedule.version, dayAndTime(schedule.madeAt))}`
    : null;

/** Manual and page: without them the schedule is unconfirmed, and says so with what to do. */
function Source({ parts, schedule }: { readonly parts: Parts; readonly schedule: HeatSchedule }) {
  const { form } = parts;
  const entered = form.manual.trim() !== '' && form.page.trim() !== '';
  return (
    <section class="form-part" aria-label={scheduleWords.source}>
      <SourceNote
        confirmed={confirmedText(schedule)}
        entered={entered}
        words={scheduleWords}
        testId="schedule-unconfirmed"
      />
      <div class="field-row">
        <TextField parts={parts} field="manual" label={scheduleWords.manual} />
        <TextField parts={parts} field="page" label={scheduleWords.page} />
      </div>
    </section>
  );
}

function Limits({ parts }: { readonly parts: Parts }) {
  const { form, idOf, errorOf, left, disabled, change } = parts;
  const sign = `°${form.unit}`;
  return (
    <section class="form-part" aria-label={scheduleWords.limits}>
      <h3>{scheduleWords.limits}</h3>
      <div class="field-row">
        <Field
          number
          id={idOf('fabricLimit')}
          label={scheduleWords.fabricLimit}
          sign={sign}
          text={form.fabricLimit.text}
          error={errorOf('fabricLimit')}
          means={scheduleWords.fabricLimitMeans}
          disabled={disabled}
          onText={(text) => change({ ...form, fabricLimit: readTemperature(text, form.unit) })}
          onDone={() => left('fabricLimit')}
        />
        <Field
          number
          id={idOf('cementLimit')}
          label={scheduleWords.cementLimit}
          sign={sign}
          text={form.cementLimit.text}
          error={errorOf('cementLimit')}
          means={
            form.cementLimit.text.trim() === '' ? scheduleWords.cementUnset : scheduleWords.cementLimitMeans
          }
          disabled={disabled}
          onText={(text) => change({ ...form, cementLimit: readTemperature(text, form.unit) })}
          onDone={() => left('cementLimit')}
        />
        <TextField parts={parts} field="limitStanding" label={scheduleWords.standing} />
      </div>
    </section>
  );
}

const MOST_STAGES = 12;

function Stages({ parts }: { readonly parts: Parts }) {
  const { form, disabled, change } = parts;
  const title = useRef<HTMLHeadingElement>(null);
  useFocusKept(form.stages.map(({ id }) => id).join(' '), title);
  return (
    <section class="form-part" aria-label={scheduleWords.stages}>
      <h3 ref={title} tabIndex={-1}>
        {scheduleWords.stages}
      </h3>
      <p class="quiet">{scheduleWords.restLimitMeans(USUAL_REST_LIMIT_S)}</p>
      <ol class="stages">
        {form.stages.map((stage, i) => (
          <StageFields key={stage.id} parts={parts} stage={stage} place={i + 1} />
        ))}
      </ol>
      {disabled || form.stages.length >= MOST_STAGES ? null : (
        <Target
          testId="add-stage"
          onPress={() => change(withNewStage(form, `stage-${randomId().slice(0, 8)}`))}
        >
          {scheduleWords.addStage}
        </Target>
      )}
    </section>
  );
}
