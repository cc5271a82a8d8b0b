import { useRef } from 'preact/hooks';
import { handbookShrink } from '../../../shared/heat/work/shrink.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { useFocusKept } from '../../parts/focus-kept.ts';
import { Target } from '../../parts/target.tsx';
import { Field } from '../fields/field.tsx';
import { readFigure, readTemperature } from '../fields/number.ts';
import type { FormParts } from '../versioned/form-parts.ts';
import type { ScheduleForm } from './form.ts';
import {
  firstShrink,
  LEAST_POINTS,
  MOST_POINTS,
  noShrink,
  type ShrinkForm,
  type ShrinkPointForm,
  withNewPoint,
  withoutPoint,
  withPoint,
} from './shrink-form.ts';

/** The shrink table of a schedule: the handbook's, or points of one's own. */
export function ShrinkFields({ parts }: { readonly parts: FormParts<ScheduleForm> }) {
  const { form, idOf, errorOf, left, disabled, change } = parts;
  const { shrink } = form;
  const to = (next: ShrinkForm): void => change({ ...form, shrink: next });
  const title = useRef<HTMLHeadingElement>(null);
  useFocusKept(String(shrink.points.length), title);
  return (
    <section class="form-part" aria-label={scheduleWords.shrink} data-testid="shrink">
      <h3 ref={title} tabIndex={-1}>
        {scheduleWords.shrink}
      </h3>
      <p class="quiet">{scheduleWords.shrinkMeans}</p>
      {shrink.points.length === 0 ? (
        <>
          <p>{scheduleWords.shrinkHandbook(handbookShrink.standing)}</p>
          {disabled ? null : (
            <Target testId="own-shrink" onPress={() => to(firstShrink(form.unit))}>
              {scheduleWords.shrinkOwn}
            </Target>
          )}
        </>
      ) : (
        <>
          <ol class="shrink-points">
            {shrink.points.map((point, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a point has nothing but its place in the list.
              <Point key={i} parts={parts} point={point} at={i} />
            ))}
          </ol>
          <div class="field-row">
            <Field
              id={idOf('shrink.standing')}
              label={scheduleWords.shrinkStanding}
              text={shrink.standing}
              error={errorOf('shrink.standing')}
              disabled={disabled}
              onText={(standing) => to({ ...shrink, standing })}
              onDone={() => left('shrink.standing')}
            />
          </div>
          {disabled ? null : (
            <div class="choice-row">
              {shrink.points.length >= MOST_POINTS ? null : (
                <Target testId="add-shrink" onPress={() => to(withNewPoint(shrink))}>
                  {scheduleWords.shrinkAdd}
                </Target>
              )}
              <Target testId="no-shrink" onPress={() => to(noShrink)}>
                {scheduleWords.shrinkNone}
              </Target>
            </div>
          )}
        </>
      )}
    </section>
  );
}

interface PointProps {
  readonly parts: FormParts<ScheduleForm>;
  readonly point: ShrinkPointForm;
  /** Counted from 0. */
  readonly at: number;
}

function Point({ parts, point, at }: PointProps) {
  const { form, idOf, errorOf, left, disabled, change } = parts;
  const name = scheduleWords.shrinkPoint(at + 1);
  const to = (shrink: ShrinkForm): void => change({ ...form, shrink });
  const [plate, percent] = [`shrink.${at}.plate`, `shrink.${at}.percent`];
  return (
    <li class="shrink-point" data-testid="shrink-point">
      <Field
        number
        id={idOf(plate)}
        label={scheduleWords.shrinkPlate}
        fullLabel={scheduleWords.of(scheduleWords.shrinkPlate, name)}
        sign={`°${form.unit}`}
        text={point.plate.text}
        error={errorOf(plate)}
        disabled={disabled}
        onText={(text) => to(withPoint(form.shrink, at, { plate: readTemperature(text, form.unit) }))}
        onDone={() => left(plate)}
      />
      <Field
        number
        id={idOf(percent)}
        label={scheduleWords.shrinkPercent}
        fullLabel={scheduleWords.of(scheduleWords.shrinkPercent, name)}
        sign="%"
        text={point.percent.text}
        error={errorOf(percent)}
        disabled={disabled}
        onText={(text) => to(withPoint(form.shrink, at, { percent: readFigure(text, '%') }))}
        onDone={() => left(percent)}
      />
      {disabled || form.shrink.points.length <= LEAST_POINTS ? null : (
        <Target label={scheduleWords.remove(name)} onPress={() => to(withoutPoint(form.shrink, at))}>
          {scheduleWords.removeShort}
        </Target>
      )}
    </li>
  );
}
