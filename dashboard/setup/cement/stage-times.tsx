import { type DryingStageKind, dryingStageKinds } from '../../../shared/cure/cement.ts';
import {
  dryingUnitSigns,
  dryingUnits,
  dryingUnitWords,
  cementFormWords as words,
} from '../../../shared/words/cements.ts';
import { dryingStageWords } from '../../../shared/words/coats.ts';
import { Field, Pick } from '../fields/field.tsx';
import { timeKey } from './check.ts';
import type { Parts } from './part-fields.tsx';
import { countedIn, readTime, type StageTime } from './times.ts';

/** The time of each stage: one, or from one to another; empty where the instructions don't give it. */
export const StageTimes = ({ parts }: { readonly parts: Parts }) => (
  <section class="form-part" aria-label={words.times}>
    <h4>{words.times}</h4>
    <p class="quiet">{words.timesMeans}</p>
    <ol class="stage-times">
      {dryingStageKinds.map((kind) => (
        <OneStage key={kind} parts={parts} kind={kind} />
      ))}
    </ol>
  </section>
);

function OneStage({ parts, kind }: { readonly parts: Parts; readonly kind: DryingStageKind }) {
  const { form, disabled, change } = parts;
  const time = form.times[kind];
  const name = dryingStageWords[kind];
  const to = (next: StageTime): void => change({ ...form, times: { ...form.times, [kind]: next } });
  return (
    <li class="stage-time" data-testid="stage-time" data-kind={kind}>
      <h5>{name}</h5>
      <End parts={parts} kind={kind} end="from" onTime={to} />
      <End parts={parts} kind={kind} end="to" onTime={to} />
      <Pick
        label={words.timeUnit}
        fullLabel={words.of(words.timeUnit, name)}
        options={dryingUnits.map((unit) => [unit, dryingUnitWords[unit]] as const)}
        chosen={time.in}
        disabled={disabled}
        onPick={(unit) => to(countedIn(time, unit))}
      />
    </li>
  );
}

interface EndProps {
  readonly parts: Parts;
  readonly kind: DryingStageKind;
  readonly end: 'from' | 'to';
  readonly onTime: (time: StageTime) => void;
}

function End({ parts, kind, end, onTime }: EndProps) {
  const { form, idOf, errorOf, left, disabled } = parts;
  const time = form.times[kind];
  const key = timeKey(kind, end);
  return (
    <Field
      number
      id={idOf(key)}
      label={words[end]}
      fullLabel={words.of(words[end], dryingStageWords[kind])}
      sign={dryingUnitSigns[time.in]}
      text={time[end].text}
      error={errorOf(key)}
      disabled={disabled}
      onText={(text) => onTime({ ...time, [end]: readTime(text, time.in) })}
      onDone={() => left(key)}
    />
  );
}
