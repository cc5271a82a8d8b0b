import type { SideId } from '../../piece/piece.ts';
import type { HeatStage } from '../schedule.ts';

/**
 * A visit: one stay of the iron on one area, or one lap over a whole side. Heat is kept per visit; what an area has had
 * is a reduction over its visits.
 */

/** Where a visit was, by the marks of the user. */
export interface Spot {
  readonly piece: string;
  /** The version of the piece's map that the area is of. */
  readonly version: number;
  readonly side: SideId;
  /** Null: the whole side, or somewhere on it. */
  readonly area: string | null;
}

/** By what it is known that the iron touched the work. */
export const contactBys = ['marks', 'motion'] as const;
export type ContactBy = (typeof contactBys)[number];

/** A stage as it was when it was reached. */
export type ReachedStage = Pick<HeatStage, 'id' | 'name' | 'lowC' | 'targetC'>;

/** Times are ms of the watch's clock. A visit is told again as it goes on, with the same number: the last one counts. */
export interface Visit {
  /** Counts the visits of one watch: with the session it names the visit. */
  readonly n: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** Null: unassigned. */
  readonly spot: Spot | null;
  /** Piece, side and area in the user's names, as they were; empty where unassigned. */
  readonly placeName: string;
  /** The place was passed by "next", or gone on with after a break, and not confirmed. */
  readonly presumed: boolean;
  readonly contactBy: ContactBy;
  readonly contactMs: number;
  /** Of the plate in contact, degC; null where nothing was read meanwhile. */
  readonly peakC: number | null;
  /** Half the width of what that may be off by, K. */
  readonly guardBandK: number;
  /** The highest that the fabric came to, by the first-order response (see `fabric.ts`), degC. */
  readonly fabricC: number | null;
  /** The highest stage whose low the fabric reached; of stages with one low the one that was being worked. */
  readonly reached: ReachedStage | null;
  /** How long the plate was in the band of the stage that was being worked, in contact, ms. */
  readonly inBandMs: number;
  /** "Lap done": it counts as a lap over every area of its side that was not visited for itself meanwhile. */
  readonly lapDone: boolean;
  /** Taken back by undo: it counts for nothing. */
  readonly takenBack: boolean;
}

/** A visit as the book has it: with its session it has a name, and UTC in place of a watch's clock. */
export interface KeptVisit extends Omit<Visit, 'fromMs' | 'toMs'> {
  readonly session: string;
  readonly fromUtcMs: number;
  readonly toUtcMs: number;
  readonly ironId: string;
  readonly ironName: string;
  readonly simulated: boolean;
  /** Where it is put since, beside the original `spot`; left out where nobody corrected it. */
  readonly corrected?: { readonly spot: Spot | null; readonly by: string; readonly atUtcMs: number };
}

/** The session that a visit is in, as much as is kept with the visit. */
export interface VisitedIn {
  readonly id: string;
  readonly ironId: string;
  readonly ironName: string;
  readonly simulated: boolean;
  /** UTC of time 0 of the watch's clock, ms since 1970. */
  readonly originUtcMs: number;
}

export function keptVisit(
  visit: Visit,
  { id, ironId, ironName, simulated, originUtcMs }: VisitedIn,
): KeptVisit {
  const { fromMs, toMs, ...heat } = visit;
  return {
    ...heat,
    session: id,
    fromUtcMs: originUtcMs + fromMs,
    toUtcMs: originUtcMs + toMs,
    ironId,
    ironName,
    simulated,
  };
}
