import type { WatchState } from '../../../shared/watch/state.ts';
import type { IronWatch } from '../iron-watch.ts';

/** The iron that is in hand: the one taken up last, else the only one there is, else the one that is on the work. */
export function ironInHand(watches: readonly IronWatch[], taken: string | null): IronWatch | null {
  const found = watches.find(({ iron }) => iron.id === taken);
  if (found !== undefined) return found;
  const [first, ...others] = watches;
  if (others.length === 0) return first ?? null;
  const working = watches.filter(({ state }) => isWorking(state));
  return working.length === 1 ? (working[0] ?? null) : null;
}

const isWorking = ({ work }: WatchState): boolean => work.place === 'on-work' || work.place === 'off-work';
