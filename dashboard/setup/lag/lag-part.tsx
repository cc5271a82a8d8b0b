import { useState } from 'preact/hooks';
import type { ProbeLag } from '../../../shared/messages/lag.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { lagCaution, lagWords } from '../../../shared/words/lag.ts';
import { viewOnly } from '../../link/daemon.ts';
import { day } from '../../parts/day.ts';
import { Target } from '../../parts/target.tsx';
import { ChooseMounting } from '../calibration/choose-mounting.tsx';
import { changeProbe, unsay } from '../changing.ts';
import { useFocusFollows } from '../led/use-focus-follows.ts';
import { Why } from '../led/why.tsx';
import { lagOf, lagWhyOf, takeLag, useLag } from './lags.ts';
import { Measuring } from './measuring.tsx';
import '../calibration/calibration.css';

/** How far a probe trails its plate: what is known of it, or step by step its measuring. */
export function LagPart({ probe }: { readonly probe: ProbeSettings }) {
  const procedure = lagOf(probe.id)?.procedure ?? null;
  const known = useLag(probe.id, procedure !== null);
  const isMeasuring = procedure !== null && !viewOnly.value;
  const step = isMeasuring ? (procedure.step?.kind ?? 'between') : 'none';
  const part = useFocusFollows(step);
  return (
    <section class="calibration" ref={part} aria-label={lagWords.title} data-testid="lag">
      <h4 class="calibration-title" tabIndex={-1} data-begin>
        {isMeasuring ? lagWords.measuring : lagWords.title}
      </h4>
      {known === null ? null : isMeasuring ? (
        <Measuring id={probe.id} procedure={procedure} />
      ) : (
        <Between probe={probe} known={known} />
      )}
    </section>
  );
}

/** Nothing is being measured: what counts now, the way to measure it, and the way to forget it. */
function Between({ probe, known }: { readonly probe: ProbeSettings; readonly known: ProbeLag }) {
  const [isChoosing, choose] = useState(false);
  const { lag } = known;
  return (
    <>
      <Known known={known} />
      {viewOnly.value ? null : isChoosing ? (
        <ChooseMounting
          caution={lagCaution}
          begin={(mounting) => {
            unsay(`probe ${probe.id}`);
            void takeLag(probe.id, 'begin', { mounting });
          }}
          end={() => choose(false)}
        />
      ) : (
        <div class="choice-row">
          <Target testId="measure-lag" onPress={() => choose(true)}>
            {lag === null ? lagWords.begin : lagWords.beginAgain}
          </Target>
          {lag === null ? null : (
            <Target
              testId="forget-lag"
              onPress={() => void changeProbe(probe, { lag: null }, lagWords.forgotten)}
            >
              {lagWords.forget}
            </Target>
          )}
        </div>
      )}
      <Why text={lagWhyOf(probe.id)} testId="lag-why" />
      <details>
        <summary>{lagWords.why}</summary>
        <div class="calibration-step">
          <p>{lagWords.means}</p>
          <p>{lagWords.counts}</p>
          <p class="quiet">{lagWords.formula}</p>
        </div>
      </details>
    </>
  );
}

const Known = ({ known: { lag, allowanceS } }: { readonly known: ProbeLag }) => (
  <p data-testid="lag-known">
    {lag === null ? (
      lagWords.unknown(lagWords.seconds(allowanceS))
    ) : (
      <>
        <strong>
          {lagWords.known(lagWords.secondsExactly(lag.tauS), lagWords.secondsExactly(lag.standardS))}
        </strong>
        , {lagWords.knownFrom(day(Date.parse(lag.measuredAt)))}
      </>
    )}
  </p>
);
