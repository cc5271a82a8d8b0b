import { ironWords } from '../../shared/words/standing.ts';
import { Notes } from '../frame/notes.tsx';
import { difference } from '../parts/unit.ts';
import { SuspectLine } from '../records/suspect-line.tsx';
import { DialLine } from './dial-line.tsx';
import { EvennessLine } from './evenness-line.tsx';
import { Figure } from './figure.tsx';
import { lead } from './irons.ts';
import { Ladder } from './ladder/ladder.tsx';
import { PlaceQuestions } from './moments/place-questions.tsx';
import { TypedLast } from './moments/typed-reading.tsx';
import { Others } from './others.tsx';
import { RecentTrace } from './recent/recent-trace.tsx';
import { Sentence, WorkLine } from './sentence.tsx';
import { Trust } from './trust.tsx';
import { Work } from './work.tsx';
import './iron.css';

/** The irons: the hottest large with its place among the stages, the others beneath. */
export function IronPage() {
  const view = lead.value;
  if (view === null) return null;
  const [plate] = view.plates;
  return (
    <div class="iron">
      <section class="iron-now" aria-label={view.iron.name}>
        <Figure view={view} />
        {plate.probe === null || plate.view.kind !== 'number' ? null : (
          <Trust key={plate.id} id={plate.id} why={difference(plate.probe.guardBandK - plate.probe.overK)} />
        )}
        <Sentence iron={view.iron} plate={plate} testId="standing" />
        <PlaceQuestions view={view} />
        <TypedLast iron={view.iron} />
        <WorkLine iron={view.iron} />
        <DialLine iron={view.iron} />
        {view.plates.length > 1 ? (
          <p class="quiet">
            {plate.probe?.label}: {ironWords.hottestOf(view.plates.length)}
          </p>
        ) : null}
        <EvennessLine view={view} />
        <RecentTrace />
        <SuspectLine />
        <Notes />
      </section>
      <Ladder
        schedule={view.iron.schedule}
        stageId={view.iron.stageId}
        guardBandK={drawnBandK(plate.probe?.guardBandK ?? 0)}
        view={plate.view}
      />
      <Work iron={view.iron} />
      <Others />
    </div>
  );
}

/** Up to the next half kelvin: what is drawn stands still while the band changes by less with every reading. */
const drawnBandK = (guardBandK: number): number => Math.ceil(guardBandK * 2) / 2;
