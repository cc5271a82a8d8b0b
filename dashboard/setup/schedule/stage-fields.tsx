import { scheduleWords } from '../../../shared/words/setup.ts';
import { Target } from '../../parts/target.tsx';
import { Field } from '../fields/field.tsx';
import { readFigure, readTemperature } from '../fields/number.ts';
import type { FormParts } from '../versioned/form-parts.ts';
import {
  type ScheduleForm,
  type StageForm,
  type StageNumber,
  stageNumbers,
  withoutStage,
  withStage,
  withStageMoved,
} from './form.ts';

interface StageFieldsProps {
  readonly parts: FormParts<ScheduleForm>;
  readonly stage: StageForm;
  /** Counted from 1. */
  readonly place: number;
}

/** One stage: its name, its three temperatures, what they rest on, and its place in the list. */
export function StageFields({ parts, stage, place }: StageFieldsProps) {
  const { form, idOf, errorOf, left, disabled, change } = parts;
  const key = (field: string): string => `${stage.id}.${field}`;
  const name = stage.name.trim() === '' ? scheduleWords.stageUnnamed(place) : stage.name;
  return (
    <li class="stage" data-testid="stage" data-id={stage.id}>
      <Field
        id={idOf(key('name'))}
        label={scheduleWords.stage}
        fullLabel={scheduleWords.of(scheduleWords.stage, String(place))}
        text={stage.name}
        error={errorOf(key('name'))}
        disabled={disabled}
        onText={(text) => change(withStage(form, stage.id, { name: text }))}
        onDone={() => left(key('name'))}
      />
      <div class="stage-numbers">
        {stageNumbers.map((field) => (
          <NumberOf key={field} parts={parts} stage={stage} field={field} name={name} />
        ))}
        <Field
          number
          id={idOf(key('restLimit'))}
          label={scheduleWords.restLimit}
          fullLabel={scheduleWords.of(scheduleWords.restLimit, name)}
          sign="s"
          text={stage.restLimit.text}
          error={errorOf(key('restLimit'))}
          disabled={disabled}
          onText={(text) => change(withStage(form, stage.id, { restLimit: readFigure(text, 's') }))}
          onDone={() => left(key('restLimit'))}
        />
      </div>
      <Field
        id={idOf(key('standing'))}
        label={scheduleWords.stageStanding}
        fullLabel={scheduleWords.of(scheduleWords.stageStanding, name)}
        text={stage.standing}
        error={errorOf(key('standing'))}
        disabled={disabled}
        onText={(text) => change(withStage(form, stage.id, { standing: text }))}
        onDone={() => left(key('standing'))}
      />
      {disabled ? null : <StagePlace parts={parts} stage={stage} place={place} name={name} />}
    </li>
  );
}

interface OfStageProps extends StageFieldsProps {
  readonly name: string;
}

function StagePlace({ parts: { form, change }, stage, place, name }: OfStageProps) {
  const last = form.stages.length;
  return (
    <div class="choice-row stage-place" tabIndex={-1} role="group" aria-label={name}>
      <Target
        label={scheduleWords.earlier(name)}
        disabled={place === 1}
        onPress={() => change(withStageMoved(form, stage.id, -1))}
      >
        {scheduleWords.up}
      </Target>
      <Target
        label={scheduleWords.later(name)}
        disabled={place === last}
        onPress={() => change(withStageMoved(form, stage.id, 1))}
      >
        {scheduleWords.down}
      </Target>
      <Target
        label={scheduleWords.remove(name)}
        disabled={last === 1}
        onPress={() => change(withoutStage(form, stage.id))}
      >
        {scheduleWords.removeShort}
      </Target>
    </div>
  );
}

interface NumberOfProps {
  readonly parts: FormParts<ScheduleForm>;
  readonly stage: StageForm;
  readonly field: StageNumber;
  readonly name: string;
}

function NumberOf({ parts, stage, field, name }: NumberOfProps) {
  const { form, idOf, errorOf, left, disabled, change } = parts;
  const key = `${stage.id}.${field}`;
  return (
    <Field
      number
      id={idOf(key)}
      label={scheduleWords[field]}
      fullLabel={scheduleWords.of(scheduleWords[field], name)}
      sign={`°${form.unit}`}
      text={stage[field].text}
      error={errorOf(key)}
      disabled={disabled}
      onText={(text) => change(withStage(form, stage.id, { [field]: readTemperature(text, form.unit) }))}
      onDone={() => left(key)}
    />
  );
}
