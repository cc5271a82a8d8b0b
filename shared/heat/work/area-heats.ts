import { cellsOf } from '../../piece/cells.ts';
import type { Area, Piece } from '../../piece/piece.ts';
import { type AreaHeat, type AreaHeats, untouched } from './area-heat.ts';
import { compareLevels } from './reached.ts';
import type { KeptVisit, Spot } from './visit.ts';

/**
 * What the areas of a piece have had: a reduction over its visits, the same whatever order they come in.
 *
 * A visit counts where it was corrected to, else where it was marked, and nowhere once it was taken back. One over an
 * area counts for that area of the map in force, by its id, whichever version of the map it was marked on; where the map
 * has no such area any more it stays in the list of visits and counts for nothing. A lap over a whole side counts as a
 * lap over each of its areas that had no visit of its own meanwhile. A visit somewhere on a side counts for no area. A
 * visit that goes on where the one before it left off, after a rest say, is of the same lap.
 */

/** What a visit counts for: the areas, and the share of its time that each has. */
type Shares = readonly { readonly area: Area; readonly share: number }[];

/** Where a visit counts; null: nowhere. */
export const spotOf = ({ takenBack, corrected, spot }: KeptVisit): Spot | null => {
  if (takenBack) return null;
  return corrected === undefined ? spot : corrected.spot;
};

/** What an area has had, by its id. */
export const heatOf = (heats: AreaHeats, area: string): AreaHeat =>
  Object.hasOwn(heats, area) ? (heats[area] ?? untouched) : untouched;

/**
 * What the areas of the piece have had, each area of its map in force named.
 * @param visits in any order, each once, as it was told last; of other pieces too. Simulated and real ones never together
 */
export function areaHeatsOf(piece: Piece, visits: readonly KeptVisit[]): AreaHeats {
  const none: AreaHeats = Object.fromEntries(piece.areas.map(({ id }) => [id, untouched]));
  const goesOn = goingOn(piece, visits);
  return visits
    .filter((visit) => spotOf(visit)?.piece === piece.id)
    .toSorted(byEnd)
    .reduce((heats, visit) => {
      const own = visitedMeanwhile(piece, visits, visit);
      return withVisit(heats, piece, visit, { own, goesOn: goesOn.has(visit) });
    }, none);
}

/** A visit that comes later than this after the one before on the same area is a lap of its own, ms (our own choice). */
const SAME_LAP_MS = 600_000;

/** The visits that go on with the lap of the one before: on the same area, with none elsewhere and no lap done between. */
export function goingOn(piece: Piece, visits: readonly KeptVisit[]): ReadonlySet<KeptVisit> {
  const here = visits.filter((visit) => spotOf(visit)?.piece === piece.id && visit.contactMs > 0);
  const inOrder = here.toSorted(byEnd);
  return new Set(
    inOrder.filter((visit, i) => {
      const before = inOrder[i - 1];
      const area = spotOf(visit)?.area ?? null;
      if (before === undefined || area === null || spotOf(before)?.area !== area) return false;
      return visit.fromUtcMs - before.toUtcMs <= SAME_LAP_MS;
    }),
  );
}

/** What has to be known of the other visits to count one. */
export interface AmongVisits {
  /** Ids of the areas that had a visit of their own during it (`visitedMeanwhile`); only a lap asks. */
  readonly own: ReadonlySet<string>;
  /** Whether it goes on with the lap of the visit before it (`goingOn`). */
  readonly goesOn: boolean;
}

/** By their ends; what remains only settles which of equals stands first. */
const byEnd = (a: KeptVisit, b: KeptVisit): number =>
  a.toUtcMs - b.toUtcMs ||
  a.fromUtcMs - b.fromUtcMs ||
  (a.session < b.session ? -1 : a.session > b.session ? 1 : a.n - b.n);

/**
 * With one more visit, that ended after those before it.
 * @param heats what the areas had before
 */
export function withVisit(
  heats: AreaHeats,
  piece: Piece,
  visit: KeptVisit,
  { own, goesOn }: AmongVisits,
): AreaHeats {
  const shares = sharesOf(piece, visit, own);
  const touched = shares.map(
    ({ area, share }) => [area.id, more(heatOf(heats, area.id), visit, { share, goesOn })] as const,
  );
  return touched.length === 0 ? heats : { ...heats, ...Object.fromEntries(touched) };
}

/**
 * Ids of the areas of the piece that were visited for themselves during a lap over their side: visits that ended in its
 * time, so that what a lap counted for is known when it is over and no later visit takes it back.
 */
export function visitedMeanwhile(
  piece: Piece,
  visits: readonly KeptVisit[],
  lap: KeptVisit,
): ReadonlySet<string> {
  const own = new Set<string>();
  if (!lap.lapDone || spotOf(lap)?.area !== null) return own;
  for (const visit of visits) {
    const spot = spotOf(visit);
    if (spot?.piece !== piece.id || spot.area === null || visit.contactMs <= 0) continue;
    if (visit.toUtcMs > lap.fromUtcMs && visit.toUtcMs <= lap.toUtcMs) own.add(spot.area);
  }
  return own;
}

function sharesOf(piece: Piece, visit: KeptVisit, own: ReadonlySet<string>): Shares {
  const spot = spotOf(visit);
  if (spot?.piece !== piece.id) return [];
  if (spot.area !== null) {
    const area = piece.areas.find(({ id }) => id === spot.area);
    // Marked, but by its motion the iron never touched it: nothing was had.
    return area === undefined || visit.contactMs <= 0 ? [] : [{ area, share: 1 }];
  }
  if (!visit.lapDone) return [];
  const areas = piece.areas.filter(({ id, side }) => side === spot.side && !own.has(id));
  const cells = areas.reduce((sum, area) => sum + cellsOf(area), 0);
  return areas.map((area) => ({ area, share: cellsOf(area) / cells }));
}

/** What an area has had with one visit more. Of stages of one level the one reached last names it. */
function more(
  heat: AreaHeat,
  visit: KeptVisit,
  { share, goesOn }: { readonly share: number; readonly goesOn: boolean },
): AreaHeat {
  const lap = goesOn ? 0 : 1;
  const rise = compareLevels(visit.reached, heat.reached);
  const reaches = visit.reached !== null && rise >= 0;
  const hotter = visit.peakC !== null && (heat.peakC === null || visit.peakC > heat.peakC);
  return {
    reached: reaches ? visit.reached : heat.reached,
    presumed: reaches ? visit.presumed && (rise > 0 || heat.presumed) : heat.presumed,
    peakC: hotter ? visit.peakC : heat.peakC,
    guardBandK: hotter ? visit.guardBandK : heat.guardBandK,
    contactMs: heat.contactMs + visit.contactMs * share,
    inBandMs: heat.inBandMs + visit.inBandMs * share,
    lapsAtStage: reaches ? (rise > 0 ? 1 : heat.lapsAtStage + lap) : heat.lapsAtStage,
    laps: heat.laps + lap,
    lastUtcMs: Math.max(heat.lastUtcMs ?? visit.toUtcMs, visit.toUtcMs),
  };
}
