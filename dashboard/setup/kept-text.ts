import type { Outcome } from '../../shared/messages/command.ts';
import { setupWords } from '../../shared/words/setup.ts';

/**
 * What came of something that the book has to have.
 * @param unkept in place of `sentence` where that says that it is kept
 */
export const keptText = ({ kept }: Pick<Outcome, 'kept'>, sentence: string, unkept = sentence): string =>
  kept ? sentence : `${unkept} ${setupWords.notInBook}`;

/** What could not be kept stays in its fields. */
export const notKept = (answer: { readonly kind: string; readonly why: string }): string =>
  setupWords.notSaved(answer.kind === 'unreached' ? `${answer.why} ${setupWords.staysHere}` : answer.why);
