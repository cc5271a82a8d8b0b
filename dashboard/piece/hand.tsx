import type { IronLive } from '../../shared/messages/live.ts';
import { actWords } from '../../shared/words/pieces.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { Figure, figureOf } from '../iron/figure.tsx';
import { Sentence, WorkLine } from '../iron/sentence.tsx';
import { situation, viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { handIron, handView, inHand, isInHand } from './bench.ts';
import { offWork, onWork, stage, takeUp } from './say.ts';

const handFigure = figureOf(handView);

/** The iron in hand with its plate temperature, to be read from two metres, and the others, one press away. */
export function Hand() {
  const iron = handIron.value;
  if (iron === null) return null;
  return (
    <section class="hand" aria-label={iron.name}>
      <Figure of={handFigure} />
      <HandSentence />
      {viewOnly.value ? null : <Others />}
    </section>
  );
}

/** What is worked with it, and whether it is on the work. */
export function HandMore() {
  const iron = handIron.value;
  if (iron === null) return null;
  return (
    <div class="hand-more">
      {viewOnly.value ? null : <Stages iron={iron} />}
      <WorkLine iron={iron} />
      {viewOnly.value ? null : (
        <div class="choice-row" role="group" aria-label={ironWords.choosePlace}>
          <Target
            chosen={iron.place === 'on-work'}
            disabled={!isInHand.value}
            onPress={onWork}
            testId="on-work"
          >
            {actWords.onWork}
          </Target>
          <Target
            chosen={iron.place === 'off-work'}
            disabled={!isInHand.value}
            onPress={offWork}
            testId="off-work"
          >
            {actWords.offWork}
          </Target>
        </div>
      )}
    </div>
  );
}

/** By name: what its band is stands on the Iron view. */
const Stages = ({ iron }: { readonly iron: IronLive }) => (
  <div class="choice-row" role="group" aria-label={actWords.stages} data-testid="stages">
    {iron.schedule.stages.map(({ id, name }) => (
      <Target key={id} chosen={iron.stageId === id} onPress={() => stage(id, name)}>
        {name}
      </Target>
    ))}
  </div>
);

function HandSentence() {
  const view = handView.value;
  return view === null ? null : (
    <Sentence iron={view.iron} plate={view.plates[0]} testId="standing" placed={false} />
  );
}

/** With one iron and that in hand there is nothing to choose. */
function Others() {
  const others = (situation.value?.irons ?? []).filter(({ id }) => id !== inHand.value);
  if (others.length === 0) return null;
  return (
    <div class="hand-others" role="group" aria-label={actWords.irons}>
      {inHand.value === null ? <p>{actWords.noneInHand}</p> : null}
      {others.map((iron) => (
        <Target key={iron.id} onPress={() => takeUp(iron.id, iron.name)}>
          {actWords.takeUp(iron.name)}
        </Target>
      ))}
    </div>
  );
}
