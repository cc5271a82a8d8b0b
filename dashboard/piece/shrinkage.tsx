import { shrinkageWords } from '../../shared/words/pieces.ts';
import { temperature } from '../parts/unit.ts';
import { handIron } from './bench.ts';

/** What the stages of the schedule do to cloth, in words. */
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
      {schedule === null ? (
        <p>{shrinkageWords.noSchedule}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">{shrinkageWords.stage}</th>
              <th scope="col">{shrinkageWords.at}</th>
            </tr>
          </thead>
          <tbody>
            {schedule.stages.map((stage) => (
              <tr key={stage.id}>
                <th scope="row">{stage.name}</th>
                <td>{temperature(stage.targetC)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>{shrinkageWords.tight}</p>
      <p>{shrinkageWords.manual}</p>
      <a class="way" href="#piece">
        {shrinkageWords.back}
      </a>
    </section>
  );
}
