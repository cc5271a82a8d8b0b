import { signal } from '@preact/signals';
import { type IronEvenness, ironEvennessSchema } from '../../../../shared/messages/evenness.ts';
import { setupWords } from '../../../../shared/words/setup.ts';
import { evennessPath, takeEvenness } from '../../../evenness/evennesses.ts';
import { post } from '../../ask-daemon.ts';

/** What came of the last change of what is known of a plate, by iron. */
export const evennessSaid = signal<Readonly<Record<string, string>>>({});

/** Asks for a change and says what came of it; null where it could not be made. */
export async function changeEvenness(
  iron: string,
  what: 'spots' | 'removal' | 'forgetting',
  body: unknown,
  words: (after: IronEvenness) => string,
): Promise<IronEvenness | null> {
  const answer = await post(`${evennessPath(iron)}/${what}`, body, ironEvennessSchema);
  if (answer.kind !== 'done') {
    evennessSaid.value = { [iron]: setupWords.notSaved(answer.why) };
    return null;
  }
  takeEvenness(answer.value);
  evennessSaid.value = { [iron]: words(answer.value) };
  return answer.value;
}
