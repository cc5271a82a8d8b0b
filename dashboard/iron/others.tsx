import { computed, type ReadonlySignal, useComputed } from '@preact/signals';
import type { IronLive } from '../../shared/messages/live.ts';
import { watchedWords } from '../../shared/words/checks.ts';
import { faultWords } from '../../shared/words/faults.ts';
import { pageWords } from '../../shared/words/page.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { Digits } from '../parts/digits.tsx';
import { Opening } from '../parts/opening.tsx';
import { figure, unit } from '../parts/unit.ts';
import { irons, lead, otherIds } from './irons.ts';
import { momentC } from './moments/moment-text.ts';
import { PlaceQuestions } from './moments/place-questions.tsx';
import { TypedLast } from './moments/typed-reading.tsx';
import type { IronView, Plate } from './plate.ts';
import { Sentence } from './sentence.tsx';
import { Work } from './work.tsx';

/** Every probe that isn't the large one: the other probes of the leading iron, then the other irons. */
export function Others() {
  if (!hasBeside.value && otherIds.value.length === 0) return null;
  return (
    <section class="others" aria-labelledby="others-title">
      <h2 id="others-title">{ironWords.others}</h2>
      <ul class="others-list">
        <Beside />
        {otherIds.value.map((id) => (
          <Other key={id} id={id} />
        ))}
      </ul>
    </section>
  );
}

/** Whether the leading iron has more than the large plate. */
const hasBeside = computed(() => (lead.value?.plates.length ?? 0) > 1);

function Beside() {
  const leading = lead.value;
  if (leading === null) return null;
  const [, ...rest] = leading.plates;
  return (
    <>
      {rest.map((plate) => (
        <li key={plate.id} class="other">
          <SmallPlate view={leading} plate={plate} />
        </li>
      ))}
    </>
  );
}

/** One other iron. Its readings change the plates alone, and those of no other iron. */
function Other({ id }: { readonly id: string }) {
  const view = useComputed(() => irons.value.find((one) => one.iron.id === id) ?? null);
  const iron = useComputed(() => view.value?.iron ?? null).value;
  if (iron === null) return null;
  return (
    <li class="other">
      <Plates of={view} />
      <TypedLast iron={iron} />
      <Opening summary={ironWords.workWith(iron.name)}>{() => <Work iron={iron} />}</Opening>
    </li>
  );
}

function Plates({ of }: { readonly of: ReadonlySignal<IronView | null> }) {
  const view = of.value;
  if (view === null) return null;
  return (
    <>
      {view.plates.map((plate) => (
        <SmallPlate key={plate.id} view={view} plate={plate} />
      ))}
      <PlaceQuestions view={view} />
    </>
  );
}

const SmallPlate = ({ view, plate }: { readonly view: IronView; readonly plate: Plate }) => (
  <div class="other-plate">
    <p class="other-name">
      {plate.probe?.label ?? (view.iron.probes.length === 0 ? view.iron.name : plate.id)}{' '}
      {view.iron.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
    </p>
    <p class="other-figure" data-testid="other-plate">
      <SmallFigure iron={view.iron} plate={plate} />
    </p>
    <Sentence iron={view.iron} plate={plate} testId="other-standing" />
    {isHotHere(view, plate) ? <strong class="hot-word">{safetyWords.hot}</strong> : null}
  </div>
);

/** A check pad or a loose probe beside one on the plate has nothing to add to how hot its iron is. */
function isHotHere({ iron, hot }: IronView, { view, probe }: Plate): boolean {
  if (view.kind === 'apart') return iron.watched !== 'monitored' && hot;
  return view.kind !== 'number' || probe?.hot === true;
}

function SmallFigure({ iron, plate: { view } }: { readonly iron: IronLive; readonly plate: Plate }) {
  if (view.kind === 'lost') return ironWords.noReading;
  if (view.kind === 'apart') return <SmallMoment iron={iron} />;
  if (view.kind === 'fault') return faultWords[view.fault].name;
  return (
    <>
      <Digits text={figure(view.plateC)} />
      <span class="other-unit">°{unit.value}</span>
    </>
  );
}

/** A check or a typed reading, in a frame and smaller, so that it passes for no live one. */
function SmallMoment({ iron }: { readonly iron: IronLive }) {
  const c = momentC(iron);
  return (
    <span class="other-moment">
      <span class="tag">{watchedWords[iron.watched]}</span> {c === null ? '' : `${figure(c)} °${unit.value}`}
    </span>
  );
}
