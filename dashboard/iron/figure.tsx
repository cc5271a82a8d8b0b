import { computed, type ReadonlySignal } from '@preact/signals';
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

/**
 * What is shown of an iron's hottest plate. Each changes seldom, but for the number itself: what shows them is then left
 * as it is.
 */
export interface PlateFigure {
  readonly shown: ReadonlySignal<IronView | null>;
  readonly isOver: ReadonlySignal<boolean>;
  readonly kind: ReadonlySignal<PlateView['kind'] | null>;
  readonly isHot: ReadonlySignal<boolean>;
  readonly isMeasured: ReadonlySignal<boolean>;
  readonly isSimulated: ReadonlySignal<boolean>;
  readonly number: ReadonlySignal<string>;
  /** How far it can be off; what the hottest spot is over it is no part of that. */
  readonly offBy: ReadonlySignal<string>;
}

export function figureOf(shown: ReadonlySignal<IronView | null>): PlateFigure {
  const plate = computed(() => shown.value?.plates[0] ?? null);
  const probe = computed(() => plate.value?.probe ?? null);
  return {
    shown,
    isOver: computed(() => plate.value !== null && shownStanding(plate.value).kind === 'over-limit'),
    kind: computed(() => plate.value?.view.kind ?? null),
    isHot: computed(() => shown.value?.hot ?? true),
    isMeasured: computed(() => probe.value?.measured ?? false),
    isSimulated: computed(() => shown.value?.iron.simulated === true),
    number: computed(() => (plate.value?.view.kind === 'number' ? figure(plate.value.view.plateC) : '')),
    offBy: computed(() => difference(probe.value === null ? 0 : probe.value.guardBandK - probe.value.overK)),
  };
}

interface FigureProps {
  readonly of: PlateFigure;
  /** The temperature alone (`head`), what else there is to say of it (`more`), or both; left out: both. */
  readonly part?: 'head' | 'more' | undefined;
}

/** The plate temperature, or in its place what is missing and what to do about it, or what was read at some moment. */
export function Figure({ of, part }: FigureProps) {
  if (of.kind.value === 'apart') return <Apart of={of} part={part} />;
  if (part === 'more') return of.kind.value === 'number' ? <Allowance of={of} /> : <FaultMeans of={of} />;
  return (
    <div class={`figure figure--${of.kind.value ?? 'none'} ${of.isOver.value ? 'figure--over' : ''}`}>
      {of.isOver.value ? <Hatch name="beyond" /> : null}
      <div class="figure-sheet">
        {of.kind.value === 'number' ? <Number of={of} part={part} /> : <Missing of={of} part={part} />}
        {of.isSimulated.value ? <p class="tag">{pageWords.simulated}</p> : null}
      </div>
    </div>
  );
}

const Apart = ({ of, part }: FigureProps) =>
  of.shown.value === null ? null : <Moments view={of.shown.value} part={part} />;

const Number = ({ of, part }: FigureProps) => (
  <>
    <div class="figure-row">
      <p class="figure-number">
        <span class="unseen">{ironWords.plate} </span>
        <Digits text={of.number} testId="plate" />
      </p>
      <span class="figure-unit">°{unit.value}</span>
      {of.isHot.value ? <HotWord /> : null}
    </div>
    {part === 'head' ? null : <Allowance of={of} />}
  </>
);

const Allowance = ({ of }: FigureProps) => (
  <p class="figure-allowance">
    {ironWords[of.isMeasured.value ? 'measured' : 'allowance'](of.offBy.value)}
    {of.isHot.value ? ` · ${safetyWords.hotMeasured}` : ''}
  </p>
);

/** What is missing of a lost daemon stands over everything already; here only that there is no number. */
function Missing({ of, part }: FigureProps) {
  const fault = faultOf(of);
  return (
    <div class="figure-missing">
      <p class="figure-fault" data-testid="plate">
        {fault === null ? ironWords.noReading : faultWords[fault.fault].name}
      </p>
      {part === 'head' ? null : <FaultMeans of={of} />}
      <p class="figure-hot">
        <HotWord /> {fault === null && part === 'head' ? '' : safetyWords.hotUnmeasured}
      </p>
      {fault === null ? null : <p class="figure-allowance">{lastRead(fault.lastMs)}</p>}
    </div>
  );
}

function FaultMeans({ of }: FigureProps) {
  const fault = faultOf(of);
  if (fault === null) return null;
  const { means, action } = faultWords[fault.fault];
  return (
    <p class="figure-means">
      {means} {action}
    </p>
  );
}

function faultOf({ shown }: PlateFigure): Extract<PlateView, { kind: 'fault' }> | null {
  const view = shown.value?.plates[0].view;
  return view?.kind === 'fault' ? view : null;
}

const lastRead = (lastMs: number | null): string =>
  lastMs === null ? ironWords.neverRead : ironWords.lastRead(formatDuration(lastMs));
