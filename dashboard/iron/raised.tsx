import { computed } from '@preact/signals';
import { navWords } from '../../shared/words/setup.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { fireCoats } from '../coats/fire-question.tsx';
import { PlateNow } from '../frame/nav-now.tsx';
import { view } from '../frame/nav-view.ts';
import { alarms, link } from '../link/daemon.ts';
import { Figure } from './figure.tsx';
import { lead, leadIron, others } from './irons.ts';
import { leadFigure } from './lead-figure.ts';
import { Sentence } from './sentence.tsx';

/**
 * Whether the plate temperature stands in the panel over everything, and not in the page beneath: on the Iron view
 * while there is anything in that panel, which would push it out of sight.
 */
export const isRaised = computed(
  () =>
    view.value === 'iron' &&
    leadIron.value !== null &&
    (alarms.value.length > 0 || fireCoats.value.length > 0 || link.value === 'lost'),
);

/** Whether its sentence stands there too: with the daemon lost there is room for what has to be done only. */
export const isSaidRaised = computed(() => isRaised.value && link.value !== 'lost');

/** The plate temperature beside what is alarming: as large as there is room for, whatever the page is scrolled to. */
export const RaisedPlate = () => (
  <section class="over-plate" data-testid="raised" aria-label={navWords.now}>
    <Figure of={leadFigure} part="head" />
    {isSaidRaised.value ? <RaisedWords /> : null}
  </section>
);

/** Where it stands, and the other irons in a line each. */
function RaisedWords() {
  const shown = lead.value;
  if (shown === null) return null;
  return (
    <>
      <Sentence iron={shown.iron} plate={shown.plates[0]} testId="standing" />
      {others.value.length === 0 ? null : (
        <ul class="over-others" aria-label={ironWords.others}>
          {others.value.map((one) => (
            <PlateNow key={one.iron.id} of={one} />
          ))}
        </ul>
      )}
    </>
  );
}
