import { formatDuration } from '../../shared/units/time.ts';
import { faultWords } from '../../shared/words/faults.ts';
import { pageWords } from '../../shared/words/page.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { Digits } from '../parts/digits.tsx';
import { Hatch } from '../parts/hatch.tsx';
import { difference, figure, unit } from '../parts/unit.ts';
import { HotWord } from './hot-word.tsx';
import { Moments } from './moments/moments.tsx';
import type { IronView, PlateView } from './plate.ts';
import { shownStanding } from './sentence.tsx';

/** The plate temperature, or in its place what is missing and what to do about it, or what was read at some moment. */
export function Figure({ view }: { readonly view: IronView }) {
  const [plate] = view.plates;
  if (plate.view.kind === 'apart') return <Moments view={view} />;
  const over = shownStanding(plate).kind === 'over-limit';
  return (
    <div class={over ? 'figure figure--over' : 'figure'}>
      {over ? <Hatch name="beyond" /> : null}
      <div class="figure-sheet">
        {plate.view.kind === 'number' ? (
          <Number
            plateC={plate.view.plateC}
            offByK={plate.probe === null ? 0 : plate.probe.guardBandK - plate.probe.overK}
            measured={plate.probe?.measured ?? false}
            hot={view.hot}
          />
        ) : (
          <Missing view={plate.view} />
        )}
        {view.iron.simulated ? <p class="tag">{pageWords.simulated}</p> : null}
      </div>
    </div>
  );
}

interface NumberProps {
  readonly plateC: number;
  /** How far it can be off; what the hottest spot is over it is no part of that. */
  readonly offByK: number;
  readonly measured: boolean;
  readonly hot: boolean;
}

const Number = ({ plateC, offByK, measured, hot }: NumberProps) => (
  <>
    <div class="figure-row">
      <p class="figure-number">
        <span class="unseen">{ironWords.plate} </span>
        <Digits text={figure(plateC)} testId="plate" />
      </p>
      <span class="figure-unit">°{unit.value}</span>
      {hot ? <HotWord /> : null}
    </div>
    <p class="figure-allowance">
      {ironWords[measured ? 'measured' : 'allowance'](difference(offByK))}
      {hot ? ` · ${safetyWords.hotMeasured}` : ''}
    </p>
  </>
);

/** What is missing of a lost daemon stands over everything already; here only that there is no number. */
const Missing = ({ view }: { readonly view: Exclude<PlateView, { kind: 'number' | 'apart' }> }) => (
  <div class="figure-missing">
    <p class="figure-fault" data-testid="plate">
      {view.kind === 'fault' ? faultWords[view.fault].name : ironWords.noReading}
    </p>
    {view.kind === 'fault' ? (
      <p class="figure-means">
        {faultWords[view.fault].means} {faultWords[view.fault].action}
      </p>
    ) : null}
    <p class="figure-hot">
      <HotWord /> {safetyWords.hotUnmeasured}
    </p>
    {view.kind === 'fault' ? <p class="figure-allowance">{lastRead(view.lastMs)}</p> : null}
  </div>
);

const lastRead = (lastMs: number | null): string =>
  lastMs === null ? ironWords.neverRead : ironWords.lastRead(formatDuration(lastMs));
