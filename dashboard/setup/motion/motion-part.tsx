import type { ProbeMotion, TrialShown } from '../../../shared/messages/motion.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { motionRefusalWords, motionWords, trialWords } from '../../../shared/words/motion.ts';
import { setupWords } from '../../../shared/words/setup.ts';
import { viewOnly } from '../../link/daemon.ts';
import { day } from '../../parts/day.ts';
import { Target } from '../../parts/target.tsx';
import { changeProbe, unsay } from '../changing.ts';
import { useFocusFollows } from '../led/use-focus-follows.ts';
import { Why } from '../led/why.tsx';
import { motionOf, motionWhyOf, takeMotion, useMotion } from './motions.ts';
import '../calibration/calibration.css';

/** Whether a probe's line tells still from moving: what is known of it, or the check as it is led. */
export function MotionPart({ probe }: { readonly probe: ProbeSettings }) {
  const now = motionOf(probe.id)?.trial ?? null;
  const known = useMotion(probe.id, now !== null && !isOver(now));
  const trial = known?.trial ?? null;
  const isGoing = trial !== null && !isOver(trial) && !viewOnly.value;
  const part = useFocusFollows(isGoing ? 'going' : 'none');
  return (
    <section class="calibration" ref={part} aria-label={motionWords.title} data-testid="motion">
      <h4 class="calibration-title" tabIndex={-1} data-begin>
        {isGoing ? motionWords.checking : motionWords.title}
      </h4>
      {known === null ? null : isGoing ? (
        <Going id={probe.id} trial={trial} />
      ) : (
        <Between probe={probe} known={known} />
      )}
      <Why text={motionWhyOf(probe.id)} testId="motion-why" />
    </section>
  );
}

/** What came to nothing is over; what was found is over once it is kept, and then there is no trial any more. */
const isOver = ({ refused, trouble }: TrialShown): boolean => refused !== null || trouble !== '';

/** What to do now, and for how long. */
const Going = ({ id, trial: { asks, leftS } }: { readonly id: string; readonly trial: TrialShown }) => (
  <div class="calibration-step" data-testid="motion-trial" data-asks={asks}>
    <p class="calibration-state" role="status" data-testid="motion-asks">
      {trialWords[asks]}
    </p>
    <p class="reading">
      <strong>{motionWords.left(leftS)}</strong>
    </p>
    <div class="choice-row">
      <Target testId="give-up-motion" onPress={() => void takeMotion(id, 'give-up', {})}>
        {motionWords.giveUp}
      </Target>
    </div>
  </div>
);

/** Nothing is being checked: what counts now, what the last check came to, and the ways to make it and to forget it. */
function Between({ probe, known }: { readonly probe: ProbeSettings; readonly known: ProbeMotion }) {
  const { check, trial } = known;
  return (
    <>
      <Known known={known} />
      {trial === null ? null : (
        <p role="status" data-testid="motion-refused">
          <strong>
            {trial.refused === null ? setupWords.notSaved(trial.trouble) : motionRefusalWords[trial.refused]}
          </strong>
        </p>
      )}
      {viewOnly.value ? null : (
        <div class="choice-row">
          <Target
            testId="check-motion"
            onPress={() => {
              unsay(`probe ${probe.id}`);
              void takeMotion(probe.id, 'begin', {});
            }}
          >
            {check === null ? motionWords.begin : motionWords.beginAgain}
          </Target>
          {check === null ? null : (
            <Target
              testId="forget-motion"
              onPress={() => void changeProbe(probe, { motion: null }, motionWords.forgotten)}
            >
              {motionWords.forget}
            </Target>
          )}
        </div>
      )}
      <p class="quiet">{motionWords.means}</p>
    </>
  );
}

const Known = ({ known: { check, onLine } }: { readonly known: ProbeMotion }) => (
  <p role="status" data-testid="motion-known">
    {check === null ? (
      onLine ? (
        motionWords.notChecked
      ) : (
        motionWords.notOnLine
      )
    ) : (
      <>
        <strong>{motionWords.checked(day(Date.parse(check.checkedAt)))}</strong>{' '}
        {motionWords.levels(motionWords.gravities(check.stillG), motionWords.gravities(check.movingG))}
        {onLine ? null : ` ${motionWords.notOnLine}`}
      </>
    )}
  </p>
);
