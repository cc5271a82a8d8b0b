import { computed, signal } from '@preact/signals';
import { type AirAnswer, airAnswerSchema } from '../../shared/messages/cure.ts';
import { agoText } from '../parts/length.ts';
import { coatsNowMs } from './clock.ts';
import { followCure } from './follow-cure.ts';
import { readCure } from './read.ts';

/** The air of the shop as the daemon has it. */

/** Null before it was read. */
export const air = signal<AirAnswer | null>(null);
/** Why it could not be read; empty while all is well. */
export const airTrouble = signal('');

export async function readAir(): Promise<void> {
  const got = await readCure('/api/air', airAnswerSchema);
  airTrouble.value = got.ok ? '' : got.why;
  if (got.ok) air.value = got.value;
}

/** Keeps it fresh for as long as it is needed; returns a function that ends it. */
export const followAir = (): (() => void) => followCure(readAir);

/** How long ago the air of now was told, in words; empty where that can't be said. */
export const airAgo = computed(() => {
  const told = air.value?.now?.at;
  return told === undefined || coatsNowMs.value === null ? '' : agoText(coatsNowMs.value - Date.parse(told));
});
