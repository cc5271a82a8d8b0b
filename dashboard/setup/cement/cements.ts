import { signal } from '@preact/signals';
import type { Cement } from '../../../shared/cure/cement.ts';
import { type CementList, cementListSchema } from '../../../shared/messages/cure.ts';
import { followCure } from '../../coats/follow-cure.ts';
import { get } from '../ask-daemon.ts';

/** The cements as the daemon has them: read where they are shown, again when they or what was learned have changed. */

/** The newest version of each, those put away too; null before they were read. */
export const cements = signal<readonly Cement[] | null>(null);
/** What was learned of each, by its id. */
export const learned = signal<CementList['learned']>({});
/** Why they could not be read; empty while all is well. */
export const cementsTrouble = signal('');

export async function readCements(): Promise<void> {
  const got = await get('/api/cements', cementListSchema);
  cementsTrouble.value = got.kind === 'done' ? '' : got.why;
  if (got.kind !== 'done') return;
  cements.value = got.value.cements;
  learned.value = got.value.learned;
}

/** Keeps them fresh for as long as they are needed; returns a function that ends it. */
export const followCements = (): (() => void) => followCure(readCements);
