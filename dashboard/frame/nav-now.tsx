import { watchedWords } from '../../shared/words/checks.ts';
import { faultWords } from '../../shared/words/faults.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { navWords } from '../../shared/words/setup.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { irons } from '../iron/irons.ts';
import { momentC, momentText } from '../iron/moments/moment-text.ts';
import type { IronView } from '../iron/plate.ts';
import { shownStanding, standingText, workedStage } from '../iron/sentence.tsx';
import { figure, unit } from '../parts/unit.ts';
import { handIron } from '../piece/bench.ts';
import { view } from './nav-view.ts';

/** Every iron's plate in one line, always in sight where another view than the irons' own is shown. */
export const PlatesNow = () =>
  view.value === 'iron' || irons.value.length === 0 ? null : (
    <section aria-label={navWords.now}>
      <ul class="now">
        {irons.value.map((one) => (
          <PlateNow key={one.iron.id} of={one} />
        ))}
      </ul>
    </section>
  );

export function PlateNow({ of }: { readonly of: IronView }) {
  const [plate] = of.plates;
  return (
    <li class={isHand(of) ? 'now-plate now-plate--hand' : 'now-plate'} data-testid="plate-now">
      <strong class={plate.view.kind === 'number' ? 'now-figure now-figure--number' : 'now-figure'}>
        {figureText(of)}
      </strong>
      {of.hot ? <strong class="hot-word">{safetyWords.hot}</strong> : null}
      <span>
        {of.iron.name}:{' '}
        {plate.view.kind === 'apart'
          ? momentText(of.iron)
          : standingText(shownStanding(plate), workedStage(of.iron))}
      </span>
    </li>
  );
}

/** The one that stands large where there is room for that, and the first one on a narrow screen. */
const isHand = ({ iron }: IronView): boolean => view.value === 'piece' && iron.id === handIron.value?.id;

function figureText({ iron, plates: [{ view: shown }] }: IronView): string {
  if (shown.kind === 'apart') {
    const c = momentC(iron);
    return `${watchedWords[iron.watched]}${c === null ? '' : ` ${figure(c)} °${unit.value}`}`;
  }
  if (shown.kind === 'number') return `${figure(shown.plateC)} °${unit.value}`;
  return shown.kind === 'fault' ? faultWords[shown.fault].name : ironWords.noReading;
}
