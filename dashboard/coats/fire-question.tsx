import { computed } from '@preact/signals';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { fireAnswers } from '../../shared/shop/entry.ts';
import { fireWords } from '../../shared/words/coats.ts';
import { isLive, viewOnly } from '../link/daemon.ts';
import { Hatch } from '../parts/hatch.tsx';
import { Target } from '../parts/target.tsx';
import { coatsRead } from './coats.ts';
import { answerFire } from './say.ts';

/** The coats whose vapour burns while an iron is hot, and that nothing was answered about. */
export const fireCoats = computed((): readonly CoatAnswer[] => {
  const read = coatsRead.value;
  return read === null ? [] : read.coats.filter(({ id }) => read.fire.includes(id));
});

export const fireText = ({ cement, placeName }: CoatAnswer): string => fireWords.ask(cement.name, placeName);

/** One question a coat, one after the other: each is answered for its own coat. */
export function FireQuestion() {
  const [coat] = fireCoats.value;
  if (coat === undefined) return null;
  const { length } = fireCoats.value;
  return (
    <section
      class="alarm alarm--act-now alarm--asked"
      aria-label={fireWords.title}
      data-testid="fire-question"
      data-coat={coat.id}
    >
      <span class="alarm-edge">
        <Hatch name="act-now" />
      </span>
      <div class="alarm-text">
        <h2 class="alarm-title">
          {fireText(coat)}
          {length > 1 ? <small>{fireWords.count(length)}</small> : null}
        </h2>
        {isLive.value ? null : <p>{fireWords.lost}</p>}
      </div>
      {viewOnly.value ? null : (
        <div class="fire-answers" role="group" aria-label={fireText(coat)}>
          {fireAnswers.map((answer) => (
            <Target key={answer} onPress={() => answerFire(coat, answer)}>
              {fireWords.answers[answer]}
              <small>{fireWords.means[answer]}</small>
            </Target>
          ))}
        </div>
      )}
      <p class="fire-decides">{fireWords.decides}</p>
    </section>
  );
}
