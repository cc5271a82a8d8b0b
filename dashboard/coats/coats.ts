import { computed, signal } from '@preact/signals';
import { type CoatAnswer, type CoatsAnswer, coatsAnswerSchema } from '../../shared/messages/cure.ts';
import { followCure } from '../cure/follow-cure.ts';
import { readCure } from '../cure/read.ts';

/** The coats that dry, as the daemon tells them: read on every page, since what may be ready is said on every page. */

/** Null before they were read. */
export const coatsRead = signal<CoatsAnswer | null>(null);
/** Why they could not be read; empty while all is well. */
export const coatsTrouble = signal('');

const NO_COATS: readonly CoatAnswer[] = [];
export const coats = computed(() => coatsRead.value?.coats ?? NO_COATS);

const read = async (): Promise<void> => {
  const got = await readCure('/api/coats', coatsAnswerSchema);
  if (got.ok) coatsRead.value = got.value;
  coatsTrouble.value = got.ok ? '' : got.why;
};

/** Keeps them fresh for as long as the page lives. */
export const followCoats = (): (() => void) => followCure(read);
