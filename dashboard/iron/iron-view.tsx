import { computed } from '@preact/signals';
import { ironWords } from '../../shared/words/standing.ts';
import { WetElsewhere } from '../coats/wet-elsewhere.tsx';
import { Notes } from '../frame/notes.tsx';
import { difference } from '../parts/unit.ts';
import { SuspectLine } from '../records/suspect-line.tsx';
import { DialLine } from './dial-line.tsx';
import { EvennessLine } from './evenness-line.tsx';
import { Figure } from './figure.tsx';
import { lead, leadIron, leadPlate } from './irons.ts';
import { Ladder } from './ladder/ladder.tsx';
import { leadFigure } from './lead-figure.ts';
import { PlaceQuestions } from './moments/place-questions.tsx';
import { TypedLast } from './moments/typed-reading.tsx';
import { Others } from './others.tsx';
import { isRaised, isSaidRaised } from './raised.tsx';
import { RecentTrace } from './recent/recent-trace.tsx';
import { Sentence, WorkLine } from './sentence.tsx';
import { Trust } from './trust.tsx';
import { Work } from './work.tsx';
import './iron.css';

/** The irons: the hottest large with its place among the stages, the others beneath. */
export function IronPage() {
  const iron = leadIron.value;
  if (iron === null) return null;
  return (
    <div class="iron">
      <section class="iron-now" aria-label={iron.name}>
        <Figure of={leadFigure} part={isRaised.value ? 'more' : undefined} />
        <LeadTrust />
        <LeadWords />
        <TypedLast iron={iron} />
        <WorkLine iron={iron} />
        <WetElsewhere here={iron.at} />
        <DialLine iron={iron} />
        <LeadProbes />
        <RecentTrace />
        <SuspectLine />
        <Notes />
      </section>
      <Ladder schedule={iron.schedule} stageId={iron.stageId} guardBandK={drawnBandK.value} />
      <Work iron={iron} />
      <Others />
    </div>
  );
}

/** Up to the next half kelvin: what is drawn stands still while the band changes by less with every reading. */
const drawnBandK = computed(() => Math.ceil((leadPlate.value?.probe?.guardBandK ?? 0) * 2) / 2);

/** The probe whose number stands large; null where no number does. */
const trustedId = computed(() => {
  const plate = leadPlate.value;
  return plate?.view.kind === 'number' && plate.probe !== null ? plate.id : null;
});
const trustedBy = computed(() => {
  const probe = leadPlate.value?.probe ?? null;
  return probe === null ? '' : difference(probe.guardBandK - probe.overK);
});

const LeadTrust = () =>
  trustedId.value === null ? null : (
    <Trust key={trustedId.value} id={trustedId.value} why={trustedBy.value} />
  );

function LeadWords() {
  const view = lead.value;
  if (view === null) return null;
  return (
    <>
      {isSaidRaised.value ? null : <Sentence iron={view.iron} plate={view.plates[0]} testId="standing" />}
      <PlaceQuestions view={view} />
    </>
  );
}

function LeadProbes() {
  const view = lead.value;
  if (view === null) return null;
  const [plate] = view.plates;
  return (
    <>
      {view.plates.length > 1 ? (
        <p class="quiet">
          {plate.probe?.label}: {ironWords.hottestOf(view.plates.length)}
        </p>
      ) : null}
      <EvennessLine view={view} />
    </>
  );
}
