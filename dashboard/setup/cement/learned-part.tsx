import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Cement } from '../../../shared/cure/cement.ts';
import { outcomeSchema } from '../../../shared/messages/command.ts';
import { learnedWords as words } from '../../../shared/words/cements.ts';
import { learned, readCements } from '../../cure/cements.ts';
import { viewOnly } from '../../link/daemon.ts';
import { randomId } from '../../link/ids.ts';
import { Target } from '../../parts/target.tsx';
import { post } from '../ask-daemon.ts';
import { keptText } from '../kept-text.ts';
import { cementPath, cementStore } from './drafts.ts';
import { learnedText } from './facts-text.ts';

/** What this shop has taught of a cement, and forgetting it: asked once more, since it can't be taken back. */
export function LearnedPart({ cement: { id, name } }: { readonly cement: Cement }) {
  const known = learned.value[id];
  return (
    <div class="learned" data-testid="learned">
      <p>{learnedText(known)}</p>
      {viewOnly.value || known === undefined ? null : <LearnAnew id={id} name={name} />}
    </div>
  );
}

function LearnAnew({ id, name }: { readonly id: string; readonly name: string }) {
  const asked = useSignal(false);
  const isSending = useSignal(false);
  // The same one until it has arrived, so that a retry never doubles.
  const commandId = useRef(randomId());
  const forget = async (): Promise<void> => {
    isSending.value = true;
    const answer = await post(
      `${cementPath(id)}/learn-anew`,
      { commandId: commandId.current },
      outcomeSchema,
    );
    if (answer.kind === 'done') {
      commandId.current = randomId();
      asked.value = false;
      await readCements();
    }
    isSending.value = false;
    cementStore.say(
      id,
      answer.kind === 'done' ? keptText(answer.value, words.done) : words.failed(answer.why),
    );
  };
  if (!asked.value)
    return (
      <Target label={words.anewOf(name)} testId="learn-anew" onPress={() => (asked.value = true)}>
        {words.anew}
      </Target>
    );
  return (
    <div class="learn-anew" role="group" aria-label={words.anewOf(name)}>
      <p>{words.anewMeans}</p>
      <div class="choice-row">
        <Target testId="keep-learned" onPress={() => (asked.value = false)}>
          {words.keep}
        </Target>
        <Target testId="learn-anew-really" disabled={isSending.value} onPress={() => void forget()}>
          {words.really}
        </Target>
      </div>
    </div>
  );
}
