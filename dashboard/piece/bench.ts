import { computed } from '@preact/signals';
import { detail, part, view } from '../frame/nav-view.ts';
import { irons, lead } from '../iron/irons.ts';
import { situation } from '../link/daemon.ts';

/** What is on the bench now: the iron in hand and where it works. These change with marks, never with readings alone. */

const work = computed(() => situation.value?.work ?? null);

/** The iron that was taken up; null: none was. */
export const inHand = computed(() => work.value?.inHand ?? null);

/** What stands large: the iron in hand, else the one that the Iron view shows. */
export const handView = computed(() => irons.value.find((one) => one.iron.id === inHand.value) ?? lead.value);
export const handIron = computed(() => handView.value?.iron ?? null);

/** Where it works, as far as the user said. */
export const at = computed(() => handIron.value?.at ?? null);
export const hereArea = computed(() => at.value?.area ?? null);

export const recentPieces = computed(() => work.value?.recent ?? []);
/** Whether all that earlier sessions did has been read. */
export const isReady = computed(() => work.value?.ready ?? true);

/** Addresses behind `#piece/` that are no piece. */
const pages = ['all', 'new', 'shrinkage'];

/** The piece that is looked at: the one that the address names, else the one in hand, else the one worked last. */
export const shownPiece = computed(() => {
  const named = view.value === 'piece' && !pages.includes(part.value) ? part.value : '';
  return named === '' ? (at.value?.piece ?? recentPieces.value[0] ?? null) : named;
});

export const isInHand = computed(() => at.value !== null && at.value.piece === shownPiece.value);

/** Whether any piece is in hand: without one there is nothing to mark on. */
export const hasPiece = computed(() => at.value !== null);

/** Whether the sheets and their targets are shown; on the pages behind them, which are read or filled in, they are not. */
export const isAtWork = computed(
  () =>
    view.value === 'piece' && !pages.includes(part.value) && detail.value === '' && shownPiece.value !== null,
);
