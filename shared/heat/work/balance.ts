import { type Area, otherSide, type Piece, type SideId, sideIds } from '../../piece/piece.ts';
import type { AreaHeats } from './area-heat.ts';
import { clothOf } from './order.ts';
import { compareLevels } from './reached.ts';
import { type SharedHeat, sharedHeat, sideHeat } from './sides.ts';

/** How far sides, and the ends of a side, are apart in laps. */

/** Why sides are not compared: there is one only, one of them has cloth without any stage yet, or their stages differ. */
export const notComparedWhys = ['one-side', 'no-heat', 'stages-differ'] as const;
/** What can be ahead: a side of the other, or one end of a side of its other end. */
export const aheadWhats = ['side', 'first-end', 'last-end'] as const;

/** A side is ahead of the other, or one end of a side of its other end, by so many laps. */
export interface Ahead {
  readonly kind: 'ahead';
  readonly what: (typeof aheadWhats)[number];
  readonly side: SideId;
  readonly byLaps: number;
}

export type Balance =
  | { readonly kind: 'not-compared'; readonly why: (typeof notComparedWhys)[number] }
  | { readonly kind: 'even' }
  | Ahead;

/** Beyond so many laps a side or an end is ahead of the other. */
export const EVEN_LAPS = 1;
/** Means of laps by size are not exact; so little over is none. */
const ROUNDING = 1e-9;

/** What lies at either end of a side: the cloth whose middle is in the first or the last third of the columns. */
export interface Ends {
  readonly first: readonly Area[];
  readonly last: readonly Area[];
}

export function endsOf(piece: Pick<Piece, 'areas' | 'columns'>, side: SideId): Ends {
  const cloth = clothOf(piece, side);
  return {
    first: cloth.filter((area) => sixMiddles(area) < 2 * piece.columns),
    last: cloth.filter((area) => sixMiddles(area) > 4 * piece.columns),
  };
}

/** Six times the middle of an area along the columns: in whole numbers, so that areas that are mirrored stay so. */
const sixMiddles = ({ column, columns }: Area): number => (2 * column + columns) * 3;

/**
 * Side against side, then end against end of each side. What is compared has cloth and stands at one stage, and is even
 * up to one lap. A side that is ahead is told before an end, and of ends the one that is further ahead.
 */
export function balanceOf(piece: Piece, heats: AreaHeats): Balance {
  const sides = sidesBalance(piece, heats);
  if (sides.kind === 'ahead') return sides;
  const ends = sideIds.slice(0, piece.sides.length).flatMap((side) => endAhead(piece, heats, side));
  const [furthest] = ends.toSorted((a, b) => b.byLaps - a.byLaps);
  return furthest ?? sides;
}

function sidesBalance(piece: Piece, heats: AreaHeats): Balance {
  if (otherSide(piece, 1) === null) return { kind: 'not-compared', why: 'one-side' };
  const [first, second] = [sideHeat(piece, heats, 1), sideHeat(piece, heats, 2)];
  if (first.reached === null || second.reached === null) return { kind: 'not-compared', why: 'no-heat' };
  if (compareLevels(first.reached, second.reached) !== 0)
    return { kind: 'not-compared', why: 'stages-differ' };
  const lead = leadOf(first, second);
  if (lead === 0) return { kind: 'even' };
  return { kind: 'ahead', what: 'side', side: lead > 0 ? 1 : 2, byLaps: Math.abs(lead) };
}

function endAhead(piece: Piece, heats: AreaHeats, side: SideId): readonly Ahead[] {
  const ends = endsOf(piece, side);
  const [first, last] = [sharedHeat(ends.first, heats), sharedHeat(ends.last, heats)];
  if (first.reached === null || last.reached === null) return [];
  if (compareLevels(first.reached, last.reached) !== 0) return [];
  const lead = leadOf(first, last);
  if (lead === 0) return [];
  return [{ kind: 'ahead', what: lead > 0 ? 'first-end' : 'last-end', side, byLaps: Math.abs(lead) }];
}

/** By how many laps one is ahead of the other; 0 where that is not beyond what counts as even. */
function leadOf(a: SharedHeat, b: SharedHeat): number {
  const lead = a.laps - b.laps;
  return Math.abs(lead) > EVEN_LAPS + ROUNDING ? lead : 0;
}
