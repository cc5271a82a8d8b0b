import type { OutcomeShown } from '../../../shared/messages/calibration.ts';
import { formatTemperature, formatTemperatureDifference } from '../../../shared/units/temperature.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { methodWords } from '../../../shared/words/calibration.ts';
import { Note } from '../../parts/note.tsx';
import { temperature, unit } from '../../parts/unit.ts';

/** What the points give so far: a correction with the trust that it would bring, or why there is none. */
export function Outcome({ outcome }: { readonly outcome: OutcomeShown }) {
  if (outcome.kind === 'refused')
    return (
      <Note hatch="missing" testId="outcome">
        <p role="status">
          <strong>{outcome.seen}</strong> {outcome.action}
        </p>
      </Note>
    );
  const { method, fromC, toC } = outcome.correction;
  const [from, to] = [fromC, toC].map((c) => formatTemperature(c, unit.value));
  return (
    <div class="calibration-step" data-testid="outcome">
      <p>
        {calibratingWords.gives}: <strong>{methodWords[method]}</strong>,{' '}
        {calibratingWords.correctionAt(from ?? '', to ?? '')}.
      </p>
      <table class="calibration-table">
        <caption>{calibratingWords.would}</caption>
        <thead>
          <tr>
            <th scope="col">{calibratingWords.at}</th>
            <th scope="col">{calibratingWords.withThis}</th>
            <th scope="col">{calibratingWords.asNow}</th>
          </tr>
        </thead>
        <tbody>
          {outcome.at.map(({ atC, guardBandK, inForceK }) => (
            <tr key={atC}>
              <th scope="row">{temperature(atC)}</th>
              <td>
                <strong>±{by(guardBandK)}</strong>
              </td>
              <td>±{by(inForceK)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const by = (k: number): string => formatTemperatureDifference(k, unit.value, 1);
