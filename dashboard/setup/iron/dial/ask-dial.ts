import { signal } from '@preact/signals';
import { ironDialSchema } from '../../../../shared/messages/dial.ts';
import { setupWords } from '../../../../shared/words/setup.ts';
import { dialPath, takeDial } from '../../../dial/dials.ts';
import { post } from '../../ask-daemon.ts';

/** What came of the last change of a dial chart, by iron. */
export const dialSaid = signal<Readonly<Record<string, string>>>({});

/** Asks for a change of an iron's dial chart and says what came of it; false where it could not be made. */
export async function changeDial(
  iron: string,
  what: 'points' | 'removal' | 'acceptance',
  body: unknown,
  words: string,
): Promise<boolean> {
  const answer = await post(`${dialPath(iron)}/${what}`, body, ironDialSchema);
  const done = answer.kind === 'done';
  if (done) takeDial(answer.value);
  dialSaid.value = { [iron]: done ? words : setupWords.notSaved(answer.why) };
  return done;
}
