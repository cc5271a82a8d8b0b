import { useEffect, useRef, useState } from 'preact/hooks';
import type { ProbeCalibrations } from '../../../shared/messages/calibration.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { waterCaution } from '../../../shared/words/calibration.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { unsay } from '../changing.ts';
import { calibrationsOf, take, useCalibrations } from './calibrations.ts';
import { InForce } from './in-force.tsx';
import { Making } from './making.tsx';
import { Versions } from './versions.tsx';
import { Why } from './why.tsx';
import './calibration.css';

/** A probe's calibration: the one in force, or step by step the one that is being made. */
export function CalibrationPart({ probe }: { readonly probe: ProbeSettings }) {
  const procedure = calibrationsOf(probe.id)?.procedure ?? null;
  const all = useCalibrations(probe.id, procedure !== null);
  const isMaking = procedure !== null && !viewOnly.value;
  const step = isMaking ? (procedure.waiting?.kind ?? 'between') : 'none';
  const part = useRef<HTMLElement>(null);
  const before = useRef(step);
  // What was pressed is gone: the focus goes to what came in its place.
  useEffect(() => {
    if (step === before.current) return;
    before.current = step;
    part.current?.querySelector<HTMLElement>('[data-begin]')?.focus();
  }, [step]);
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
        <Choosing id={probe.id} end={() => choose(false)} />
      ) : (
        <div class="choice-row">
          <Target testId="calibrate" onPress={() => choose(true)}>
            {all.versions.length === 0 ? calibratingWords.begin : calibratingWords.beginAgain}
          </Target>
        </div>
      )}
      <Why id={probe.id} />
      <Versions all={all} />
    </>
  );
}

/** Before anything else the caution; then how the probe is mounted, which decides what it may be taken to. */
function Choosing({ id, end }: { readonly id: string; readonly end: () => void }) {
  const begin = (mounting: 'loose' | 'fitted'): void => {
    unsay(`probe ${id}`);
    void take(id, 'begin', { mounting });
  };
  const caution = useRef<HTMLHeadingElement>(null);
  useEffect(() => caution.current?.focus(), []);
  return (
    <div class="calibration-step" data-testid="choose-mounting">
      <h5 class="calibration-step-title" tabIndex={-1} ref={caution}>
        {calibratingWords.first}
      </h5>
      <Note hatch="beyond" testId="water-caution">
        <strong>{waterCaution}</strong>
      </Note>
      <p>{calibratingWords.which}</p>
      <div class="choice-row">
        <Target main testId="begin-fitted" onPress={() => begin('fitted')}>
          <span>{calibratingWords.fitted}</span>
          <small>{calibratingWords.fittedMeans}</small>
        </Target>
        <Target main testId="begin-loose" onPress={() => begin('loose')}>
          <span>{calibratingWords.loose}</span>
          <small>{calibratingWords.looseMeans}</small>
        </Target>
        <Target onPress={end}>{calibratingWords.neverMind}</Target>
      </div>
    </div>
  );
}
