import type { ProbeCalibrations } from '../../../shared/messages/calibration.ts';
import { formatTemperatureDifference } from '../../../shared/units/temperature.ts';
import { calibratingWords, confidenceText } from '../../../shared/words/calibrating.ts';
import { calibrationWords, methodWords, mountingWords } from '../../../shared/words/calibration.ts';
import { day, dayAndTime } from '../../parts/day.ts';
import { unit } from '../../parts/unit.ts';
import { DueNote } from './due-note.tsx';

/** The calibration in force, with how far it makes a reading trusted; or what stands in for one. */
export function InForce({ all }: { readonly all: ProbeCalibrations }) {
  const { versions, budget } = all;
  const [newest] = versions;
  const guard =
    budget === null
      ? calibratingWords.noGuard
      : `${calibratingWords.guard(by(budget.guardBandK - budget.overK))}, ${confidenceText(budget.confidence)}`;
  if (newest === undefined)
    return (
      <div data-testid="in-force">
        <p>{calibrationWords.none}</p>
        <p>{guard}</p>
      </div>
    );
  const { version, madeAt, by: who, mounting, correction, dueUtcMs } = newest.calibration;
  return (
    <div class="calibration-step" data-testid="in-force">
      <p>
        <strong>{calibratingWords.inForce(version, dayAndTime(madeAt))}</strong>
        {who === '' ? '' : `, ${calibratingWords.by(who)}`}
      </p>
      <DueNote all={all} />
      <dl class="facts">
        <dt>{calibratingWords.method}</dt>
        <dd>
          {methodWords[correction.method]}; {mountingWords[mounting]}
        </dd>
        <dt>{calibratingWords.trust}</dt>
        <dd data-testid="in-force-guard">{guard}</dd>
        <dt>{calibratingWords.dueOn}</dt>
        <dd>{dueUtcMs === null ? calibratingWords.noDue : day(dueUtcMs)}</dd>
      </dl>
    </div>
  );
}

const by = (k: number): string => formatTemperatureDifference(k, unit.value, 1);
