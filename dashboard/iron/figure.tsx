import { computed } from '@preact/signals';
import { formatDuration } from '../../shared/units/time.ts';
import { faultWords } from '../../shared/words/faults.ts';
import { pageWords } from '../../shared/words/page.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { Digits } from '../parts/digits.tsx';
import { Hatch } from '../parts/hatch.tsx';
import { difference, figure, unit } from '../parts/unit.ts';
import { HotWord } from './hot-word.tsx';
import { lead, leadIron, leadPlate } from './irons.ts';
import { Moments } from './moments/moments.tsx';
import { shownStanding } from './sentence.tsx';

// Each of these changes seldom, but for the number itself: what shows them is then left as it is.
const isOver = computed(
  () => leadPlate.value !== null && shownStanding(leadPlate.value).kind === 'over-limit',
);
const isNumber = computed(() => leadPlate.value?.view.kind === 'number');
const isApart = computed(() => leadPlate.value?.view.kind === 'apart');
const isHot = computed(() => lead.value?.hot ?? true);
const isMeasured = computed(() => leadPlate.value?.probe?.measured ?? false);
const number = computed(() => {
  const shown = leadPlate.value?.view;
  return shown?.kind === 'number' ? figure(shown.plateC) : '';
});
/** How far it can be off; what the hottest spot is over it is no part of that. */
const offBy = computed(() => {
  const probe = leadPlate.value?.probe ?? null;
  return difference(probe === null ? 0 : probe.guardBandK - probe.overK);
});

/** The plate temperature, or in its place what is missing and what to do about it, or what was read at some moment. */
export function Figure() {
  if (isApart.value) return lead.value === null ? null : <Moments view={lead.value} />;
  return (
    <div class={isOver.value ? 'figure figure--over' : 'figure'}>
      {isOver.value ? <Hatch name="beyond" /> : null}
      <div class="figure-sheet">
        {isNumber.value ? <Number /> : <Missing />}
        {leadIron.value?.simulated === true ? <p class="tag">{pageWords.simulated}</p> : null}
      </div>
    </div>
  );
}

const Number = () => (
  <>
    <div class="figure-row">
      <p class="figure-number">
        <span class="unseen">{ironWords.plate} </span>
        <Digits text={number} testId="plate" />
      </p>
      <span class="figure-unit">°{unit.value}</span>
      {isHot.value ? <HotWord /> : null}
    </div>
    <p class="figure-allowance">
      {ironWords[isMeasured.value ? 'measured' : 'allowance'](offBy.value)}
      {isHot.value ? ` · ${safetyWords.hotMeasured}` : ''}
    </p>
  </>
);

/** What is missing of a lost daemon stands over everything already; here only that there is no number. */
function Missing() {
  const view = leadPlate.value?.view;
  const fault = view?.kind === 'fault' ? view : null;
  return (
    <div class="figure-missing">
      <p class="figure-fault" data-testid="plate">
        {fault === null ? ironWords.noReading : faultWords[fault.fault].name}
      </p>
      {fault === null ? null : (
        <p class="figure-means">
          {faultWords[fault.fault].means} {faultWords[fault.fault].action}
        </p>
      )}
      <p class="figure-hot">
        <HotWord /> {safetyWords.hotUnmeasured}
      </p>
      {fault === null ? null : <p class="figure-allowance">{lastRead(fault.lastMs)}</p>}
    </div>
  );
}

const lastRead = (lastMs: number | null): string =>
  lastMs === null ? ironWords.neverRead : ironWords.lastRead(formatDuration(lastMs));
