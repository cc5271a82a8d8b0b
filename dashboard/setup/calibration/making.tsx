import { useState } from 'preact/hooks';
import type { ProbeCalibrations, ProcedureShown } from '../../../shared/messages/calibration.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { pointWords, waterCaution } from '../../../shared/words/calibration.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { Why } from '../led/why.tsx';
import { take, whyOf } from './calibrations.ts';
import { endDraft } from './drafts.ts';
import { Finish } from './finish.tsx';
import { Outcome } from './outcome.tsx';
import { PointsTable } from './points-table.tsx';
import { Residuals } from './residuals.tsx';
import { WaitingStep } from './waiting-step.tsx';

interface MakingProps {
  readonly probe: ProbeSettings;
  readonly all: ProbeCalibrations;
  readonly procedure: ProcedureShown;
}

/** A calibration that is being made: a point after another, and what they give so far. */
export function Making({ probe, all, procedure }: MakingProps) {
  const { waiting, points, outcome, trouble } = procedure;
  const { id } = probe;
  return (
    <>
      {trouble === '' ? null : (
        <Note hatch="missing" testId="calibration-trouble">
          {trouble}
        </Note>
      )}
      {waiting === null ? (
        <NextPoint id={id} procedure={procedure} />
      ) : (
        <WaitingStep id={id} waiting={waiting} place={points.length + 1} />
      )}
      {points.length === 0 ? null : (
        <PointsTable
          title={calibratingWords.points}
          points={points}
          residualsK={outcome?.kind === 'correction' ? outcome.residualsK : null}
          drop={(point) => void take(id, 'drop', { point })}
        />
      )}
      {outcome?.kind === 'correction' ? (
        <Residuals points={points} residualsK={outcome.residualsK} along={outcome.along} />
      ) : null}
      {outcome === null || waiting !== null ? null : <Outcome outcome={outcome} />}
      {waiting === null && outcome?.kind === 'correction' ? (
        <Finish id={id} version={(all.versions[0]?.calibration.version ?? 0) + 1} />
      ) : null}
      {waiting === null ? <Why text={whyOf(id)} /> : null}
      <GiveUp id={id} hasPoints={points.length > 0} />
    </>
  );
}

function NextPoint({ id, procedure }: { readonly id: string; readonly procedure: ProcedureShown }) {
  const { kinds, points, trouble } = procedure;
  const isFirst = points.length === 0;
  return (
    <div class="calibration-step">
      {isFirst ? (
        <Note hatch="beyond">
          <strong>{waterCaution}</strong>
        </Note>
      ) : null}
      <p class="pick-label">{isFirst ? calibratingWords.take : calibratingWords.takeAnother}</p>
      {isFirst ? <p>{calibratingWords.oneIsEnough}</p> : null}
      <div class="choice-row">
        {kinds.map((kind) => (
          <Target
            key={kind}
            main={isFirst}
            testId={`wait-${kind}`}
            disabled={trouble !== ''}
            onPress={() => void take(id, 'wait', { kind })}
          >
            {pointWords[kind].name}
          </Target>
        ))}
      </div>
    </div>
  );
}

/** Points that were measured go only by a second tap. */
function GiveUp({ id, hasPoints }: { readonly id: string; readonly hasPoints: boolean }) {
  const [isAsked, ask] = useState(false);
  const giveUp = async (): Promise<void> => {
    if (await take(id, 'give-up', {})) endDraft(id);
  };
  if (!isAsked)
    return (
      <div class="choice-row">
        <Target testId="give-up" onPress={() => (hasPoints ? ask(true) : void giveUp())}>
          {calibratingWords.giveUp}
        </Target>
      </div>
    );
  return (
    <div class="calibration-step">
      <p role="status">{calibratingWords.givesUp}</p>
      <div class="choice-row">
        <Target testId="give-up-really" onPress={() => void giveUp()}>
          {calibratingWords.reallyGiveUp}
        </Target>
        <Target onPress={() => ask(false)}>{calibratingWords.goOn}</Target>
      </div>
    </div>
  );
}
