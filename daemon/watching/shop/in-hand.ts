import type { WatchState } from '../../../shared/watch/state.ts';

/** An iron as it is watched, as far as it matters which one is in hand. */
interface Watched {
  readonly iron: { readonly id: string };
  readonly state: Pick<WatchState, 'work'>;
}

/** The iron that is in hand: the one taken up last, else the only one there is, else the one that is on the work. */
export function ironInHand<T extends Watched>(watches: readonly T[], taken: string | null): T | null {
  const found = watches.find(({ iron }) => iron.id === taken);
  if (found !== undefined) return found;
  const [first, ...others] = watches;
  if (others.length === 0) return first ?? null;
  const working = watches.filter(isWorking);
  return working.length === 1 ? (working[0] ?? null) : null;
}

/** The iron that works on a piece; null: none does. The one in hand before others. */
export function ironWorkingOn<T extends Watched>(
  piece: string,
  watches: readonly T[],
  taken: string | null,
): T | null {
  const inHand = ironInHand(watches, taken);
  const first = inHand === null ? [] : [inHand];
  return [...first, ...watches].find(({ state }) => state.work.at?.piece === piece) ?? null;
}

const isWorking = ({ state: { work } }: Watched): boolean =>
  work.place === 'on-work' || work.place === 'off-work';
