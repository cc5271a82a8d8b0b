import { coatingPractice } from '../../../shared/cure/conditions.ts';
import { airDifference, airTemperature, humidity } from '../../../shared/words/air.ts';
import { cementFormWords as words } from '../../../shared/words/cements.ts';
import { type Parts, PercentField, TemperatureField } from './part-fields.tsx';

/** The air at which the times hold, and what the air may be; general practice stands in for what is left empty. */
export function AirFields({ parts }: { readonly parts: Parts }) {
  const { unit } = parts.form;
  const { lowC, highC, highRhPct, marginK } = coatingPractice;
  const [low, high, damp] = [airTemperature(lowC, unit), airTemperature(highC, unit), humidity(highRhPct)];
  return (
    <>
      <section class="form-part" aria-label={words.conditions}>
        <h4>{words.conditions}</h4>
        <p class="quiet">{words.conditionsMeans}</p>
        <div class="field-row">
          <TemperatureField parts={parts} field="at" label={words.at} />
          <PercentField parts={parts} field="atRh" label={words.atRh} />
        </div>
      </section>
      <section class="form-part" aria-label={words.limits}>
        <h4>{words.limits}</h4>
        <p class="quiet">{words.limitsMeans(low, high, damp, airDifference(marginK, unit))}</p>
        <div class="field-row">
          <TemperatureField parts={parts} field="low" label={words.low} means={words.practice(low)} />
          <TemperatureField parts={parts} field="high" label={words.high} means={words.practice(high)} />
          <PercentField parts={parts} field="lowRh" label={words.lowRh} means={words.noLowRh} />
          <PercentField parts={parts} field="highRh" label={words.highRh} means={words.practice(damp)} />
        </div>
      </section>
    </>
  );
}
