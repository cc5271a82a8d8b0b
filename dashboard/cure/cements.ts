import { signal } from '@preact/signals';
import type { Cement } from '../../shared/cure/cement.ts';
import { type CementList, cementListSchema } from '../../shared/messages/cure.ts';
import { followCure } from './follow-cure.ts';
import { readCure } from './read.ts';

/** The cements as the daemon has them: read where they are shown, again when they or what was learned have changed. */

/** The newest version of each, those put away too; null before they were read. */
export const cements = signal<readonly Cement[] | null>(null);
/** What was learned of each, by its id. */
export const learned = signal<CementList['learned']>({});
/** Why they could not be read; empty while all is well. */
export const cementsTrouble = signal('');

export async function readCements(): Promise<void> {
  const got = await readCure('/api/cements', cementListSchema);
  cementsTrouble.value = got.ok ? '' : got.why;
  if (!got.ok) return;
  cements.value = got.value.cements;
  learned.value = got.value.learned;
}

/** Keeps them fresh for as long as they are needed; returns a function that ends it. */
export const followCements = (): (() => void) => followCure(readCements);

/** Whether its day is past. @param day as ISO 8601 writes it; null: not known */
export const isExpired = ({ expiresOn }: Pick<Cement, 'expiresOn'>, day: string | null): boolean =>
  expiresOn !== null && day !== null && expiresOn < day;
