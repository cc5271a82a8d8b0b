import { useState } from 'preact/hooks';
import type { ProbeCalibrations } from '../../../shared/messages/calibration.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { waterCaution } from '../../../shared/words/calibration.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { unsay } from '../changing.ts';
import { useFocusFollows } from '../led/use-focus-follows.ts';
import { Why } from '../led/why.tsx';
import { calibrationsOf, take, useCalibrations, whyOf } from './calibrations.ts';
import { ChooseMounting } from './choose-mounting.tsx';
import { InForce } from './in-force.tsx';
import { Making } from './making.tsx';
import { Versions } from './versions.tsx';
import './calibration.css';

/** A probe's calibration: the one in force, or step by step the one that is being made. */
export function CalibrationPart({ probe }: { readonly probe: ProbeSettings }) {
  const procedure = calibrationsOf(probe.id)?.procedure ?? null;
  const all = useCalibrations(probe.id, procedure !== null);
  const isMaking = procedure !== null && !viewOnly.value;
  const step = isMaking ? (procedure.waiting?.kind ?? 'between') : 'none';
  const part = useFocusFollows(step);
  return (
    <section class="calibration" ref={part} aria-label={calibratingWords.title} data-testid="calibration">
      <h4 class="calibration-title" tabIndex={-1} data-begin>
        {isMaking ? calibratingWords.making : calibratingWords.title}
      </h4>
      {all === null ? null : isMaking ? (
        <Making probe={probe} all={all} procedure={procedure} />
      ) : (
        <Between probe={probe} all={all} />
      )}
    </section>
  );
}

/** Nothing is being made: what is in force, the way to a new one, and the earlier ones. */
function Between({ probe, all }: { readonly probe: ProbeSettings; readonly all: ProbeCalibrations }) {
  const [isChoosing, choose] = useState(false);
  return (
    <>
      <InForce all={all} />
      {viewOnly.value ? null : isChoosing ? (
        <ChooseMounting
          caution={waterCaution}
          begin={(mounting) => {
            unsay(`probe ${probe.id}`);
            void take(probe.id, 'begin', { mounting });
          }}
          end={() => choose(false)}
        />
      ) : (
        <div class="choice-row">
          <Target testId="calibrate" onPress={() => choose(true)}>
            {all.versions.length === 0 ? calibratingWords.begin : calibratingWords.beginAgain}
          </Target>
        </div>
      )}
      <Why text={whyOf(probe.id)} />
      <Versions all={all} />
    </>
  );
}
