import type { LagProcedureShown, StepShown } from '../../../shared/messages/lag.ts';
import { formatTemperature } from '../../../shared/units/temperature.ts';
import { lagWords, stepStates, stepWords } from '../../../shared/words/lag.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';
import { sayOf } from '../changing.ts';
import { Why } from '../led/why.tsx';
import { lagWhyOf, takeLag } from './lags.ts';

interface MeasuringProps {
  readonly id: string;
  readonly procedure: LagProcedureShown;
}

/** A lag that is being measured: how the probe is given a step, and how that goes. */
export const Measuring = ({ id, procedure: { kinds, step, trouble } }: MeasuringProps) => (
  <>
    {trouble === '' ? null : (
      <Note hatch="missing" testId="lag-trouble">
        {trouble}
      </Note>
    )}
    {step === null ? (
      <div class="calibration-step">
        <p class="pick-label">{lagWords.how}</p>
        <div class="choice-row">
          {kinds.map((kind) => (
            <Target
              key={kind}
              main
              testId={`step-${kind}`}
              disabled={trouble !== ''}
              onPress={() => void takeLag(id, 'step', { kind })}
            >
              <span>{stepWords[kind].name}</span>
              <small>{stepWords[kind].means}</small>
            </Target>
          ))}
        </div>
        <p class="quiet">{lagWords.fixed}</p>
      </div>
    ) : (
      <Step step={step} />
    )}
    <Why text={lagWhyOf(id)} testId="lag-why" />
    <Answers id={id} step={step} />
  </>
);

/** What to do, how the reading stands, and what came of it. */
function Step({ step }: { readonly step: StepShown }) {
  const words = stepWords[step.kind];
  return (
    <div class="calibration-step" data-testid="lag-step" data-state={step.state}>
      <h5 class="calibration-step-title">{words.name}</h5>
      <Note hatch="beyond">
        <strong>{words.caution}</strong>
      </Note>
      <div class="calibration-sides">
        <ol class="calibration-how">
          {words.steps.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ol>
        <Standing step={step} />
      </div>
    </div>
  );
}

function Standing({ step }: { readonly step: StepShown }) {
  const { readC, progress, state, sinceS, found, refused } = step;
  return (
    <div class="calibration-held">
      <p class="reading">
        <span class="calibration-label">{lagWords.reading}</span>{' '}
        <strong data-testid="lag-reading">{readC === null ? lagWords.noReading : at(readC)}</strong>
      </p>
      {state === 'resting' || state === 'ready' ? (
        <progress class="calibration-progress" max={1} value={progress} aria-label={lagWords.progress} />
      ) : null}
      <p class="calibration-state" role="status" data-testid="lag-state">
        {state === 'ready'
          ? stepWords[step.kind].now
          : state === 'settling'
            ? stepStates.settling
            : stepStates[state]}
      </p>
      {state === 'settling' && sinceS !== null ? <p>{lagWords.since(sinceS.toFixed(0))}</p> : null}
      {found === null ? null : (
        <p data-testid="lag-found">
          <strong>
            {lagWords.result(lagWords.secondsExactly(found.tauS), lagWords.secondsExactly(found.standardS))}
          </strong>{' '}
          {lagWords.from(at(found.startC), at(found.endC), found.readings)}
        </p>
      )}
      {refused === null ? null : (
        <p data-testid="lag-refused">
          <strong>{refused.seen}</strong> {refused.action}
        </p>
      )}
    </div>
  );
}

/** What can be done now: keep it, end it, do it again, leave it. */
function Answers({ id, step }: { readonly id: string; readonly step: StepShown | null }) {
  const keep = async (): Promise<void> => {
    const lag = (await takeLag(id, 'keep', {}))?.lag;
    if (lag) sayOf(`probe ${id}`, lagWords.kept(lagWords.secondsExactly(lag.tauS)));
  };
  const isOver = step?.state === 'found' || step?.state === 'refused';
  return (
    <div class="choice-row">
      {step?.state === 'found' ? (
        <Target main testId="keep-lag" onPress={() => void keep()}>
          {lagWords.keep}
        </Target>
      ) : null}
      {step !== null && isOver ? (
        <Target
          main={step.state === 'refused'}
          testId="again-lag"
          onPress={() => void takeLag(id, 'step', { kind: step.kind })}
        >
          {lagWords.again}
        </Target>
      ) : null}
      {step !== null && !isOver ? (
        <Target testId="stop-step" onPress={() => void takeLag(id, 'stop', {})}>
          {lagWords.stop}
        </Target>
      ) : null}
      <Target testId="give-up-lag" onPress={() => void takeLag(id, 'give-up', {})}>
        {lagWords.giveUp}
      </Target>
    </div>
  );
}

const at = (c: number): string => formatTemperature(c, unit.value, 1);
