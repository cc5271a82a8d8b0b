import type { HeatSchedule } from '../../shared/heat/schedule.ts';
import { freeShrink, handbookShrink } from '../../shared/heat/work/shrink.ts';
import { shrinkageWords } from '../../shared/words/pieces.ts';
import { temperature } from '../parts/unit.ts';
import { handIron } from './bench.ts';

/** What the stages of the schedule do to cloth, in words and in percent of loose cloth. It is shown nowhere else. */
export function Shrinkage() {
  const schedule = handIron.value?.schedule ?? null;
  return (
    <section class="shrinkage" aria-labelledby="shrinkage-title" data-testid="shrinkage">
      <h2 id="shrinkage-title" class="piece-title">
        {shrinkageWords.title}
      </h2>
      <p>{shrinkageWords.means}</p>
      <p>
        <b>{shrinkageWords.loose}</b>
      </p>
      {schedule === null ? <p>{shrinkageWords.noSchedule}</p> : <Stages schedule={schedule} />}
      <p>{shrinkageWords.tight}</p>
      <p>{shrinkageWords.manual}</p>
      <a class="way" href="#piece">
        {shrinkageWords.back}
      </a>
    </section>
  );
}

const Stages = ({ schedule }: { readonly schedule: HeatSchedule }) => (
  <>
    <table class="shrink-table">
      <thead>
        <tr>
          <th scope="col">{shrinkageWords.stage}</th>
          <th scope="col">{shrinkageWords.at}</th>
          <th scope="col">{shrinkageWords.shrinks}</th>
        </tr>
      </thead>
      <tbody>
        {schedule.stages.map((stage) => (
          <tr key={stage.id}>
            <th scope="row">{stage.name}</th>
            <td>{temperature(stage.targetC)}</td>
            <td>{shrinkText(stage.targetC, schedule)}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <p data-testid="shrink-source">
      {shrinkageWords.source((schedule.shrink ?? handbookShrink).standing)} {shrinkageWords.between}
    </p>
  </>
);

const says = {
  'less-than': shrinkageWords.lessThan,
  about: shrinkageWords.about,
  'at-least': shrinkageWords.atLeast,
} as const;

function shrinkText(plateC: number, { shrink }: HeatSchedule): string {
  const { bound, percent } = freeShrink(plateC, shrink);
  return says[bound](String(Math.round(percent * 10) / 10));
}
