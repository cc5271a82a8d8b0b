import { computed, effect, signal } from '@preact/signals';
import { outbox } from '../link/commands.ts';
import { isLive } from '../link/daemon.ts';
import { handIron, hasPiece } from './bench.ts';
import { next } from './say.ts';

/** "Next" where no stage is chosen: no area can be proposed then, so it is not sent, and that is said in sight. */

/** While something waits to be sent the daemon decides: it may be the stage. */
const lacksStage = computed(
  () =>
    hasPiece.value && isLive.value && outbox.value.waiting.length === 0 && handIron.value?.stageId === null,
);

/** Whether it was said in vain, by a key or by the pedal: until a stage is chosen, something else is said, or that is read. */
export const nextInVain = signal(false);

effect(() => {
  if (!lacksStage.value) nextInVain.value = false;
});

/** @returns the id that it is sent under; null where it marks nothing */
export function sayNext(): string | null {
  nextInVain.value = lacksStage.peek();
  return nextInVain.peek() ? null : next();
}
