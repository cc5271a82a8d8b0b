import { useState } from 'preact/hooks';
import type { WaitingShown } from '../../../shared/messages/calibration.ts';
import { formatTemperature, formatTemperatureDifference } from '../../../shared/units/temperature.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { pointWords, waitingWords } from '../../../shared/words/calibration.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';
import { Why } from '../led/why.tsx';
import { take, whyOf } from './calibrations.ts';
import { type FieldErrors, keepOf, pointKept, typedOf } from './drafts.ts';
import { PointFields } from './point-fields.tsx';

interface WaitingStepProps {
  readonly id: string;
  readonly waiting: WaitingShown;
  /** Which point it will be, from 1. */
  readonly place: number;
}

/** Waits at a point: what to do, how steady the reading is, what the point's own temperature follows from. */
export function WaitingStep({ id, waiting, place }: WaitingStepProps) {
  const [errors, setErrors] = useState<FieldErrors>({});
  const { kind, steady } = waiting;
  const words = pointWords[kind];
  const keep = async (): Promise<void> => {
    const asked = keepOf(kind, typedOf(id));
    setErrors('errors' in asked ? asked.errors : {});
    if ('body' in asked && (await take(id, 'keep', asked.body))) pointKept(id);
  };
  return (
    <div class="calibration-step" data-testid="waiting" data-steady={steady}>
      <h5 class="calibration-step-title">
        {calibratingWords.point} {place}: {words.name}
      </h5>
      <Note hatch="beyond">
        <strong>{words.caution}</strong>
      </Note>
      <div class="calibration-sides">
        <div class="calibration-step">
          <ol class="calibration-how">
            {words.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <Held waiting={waiting} />
        </div>
        <PointFields id={id} kind={kind} errors={errors} />
      </div>
      <Why text={whyOf(id)} />
      <div class="choice-row">
        <Target main testId="keep-point" onPress={() => void keep()}>
          {calibratingWords.keep}
        </Target>
        <Target testId="leave-point" onPress={() => void take(id, 'wait', { kind: null })}>
          {calibratingWords.leave}
        </Target>
      </div>
    </div>
  );
}

/** How the reading holds. Only a change between waiting and steady is spoken, not every number. */
function Held({ waiting }: { readonly waiting: WaitingShown }) {
  const { meanC, spreadK, driftKPerMin, progress, steady } = waiting;
  return (
    <div class="calibration-held">
      <p class="reading">
        <span class="calibration-label">{calibratingWords.reading}</span>{' '}
        <strong data-testid="waiting-reading">
          {meanC === null ? calibratingWords.noReading : formatTemperature(meanC, unit.value, 1)}
        </strong>
      </p>
      <progress
        class="calibration-progress"
        max={1}
        value={progress}
        aria-label={calibratingWords.progress}
      />
      <p class="calibration-state" role="status" data-testid="waiting-state">
        {meanC === null ? waitingWords.waiting : waitingWords[steady ? 'steady' : 'settling']}
      </p>
      <dl class="facts">
        <dt>{calibratingWords.spread}</dt>
        <dd>{said(spreadK)}</dd>
        <dt>{calibratingWords.drift}</dt>
        <dd>{said(driftKPerMin)}</dd>
      </dl>
    </div>
  );
}

const said = (k: number | null): string =>
  k === null ? calibratingWords.unknown : formatTemperatureDifference(k, unit.value, 2);
