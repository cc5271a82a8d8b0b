import type { HeatStage } from '../../../shared/heat/schedule.ts';
import type { AreaHeat } from '../../../shared/heat/work/area-heat.ts';
import { heatOf, spotOf } from '../../../shared/heat/work/area-heats.ts';
import { balanceOf } from '../../../shared/heat/work/balance.ts';
import { capC } from '../../../shared/heat/work/order.ts';
import { sideHeat } from '../../../shared/heat/work/sides.ts';
import type { KeptVisit } from '../../../shared/heat/work/visit.ts';
import type { Next, PieceHeat, VisitAnswer } from '../../../shared/messages/piece.ts';
import { visitPlaceOf } from '../../../shared/messages/visit.ts';
import type { Piece, SideId } from '../../../shared/piece/piece.ts';
import { lastNote } from '../../../shared/shop/shop.ts';
import type { ShopKeeper } from './shop-keeper.ts';

/** What is answered of a piece: what it has had, and what comes next. */

/** So many visits are listed. */
const LISTED = 100;

export interface HeatAsked {
  readonly shop: ShopKeeper;
  readonly piece: Piece;
  readonly simulated: boolean;
  readonly stages: readonly HeatStage[];
  readonly next: Next | null;
  readonly suspects: readonly string[];
  readonly overruled: boolean;
}

export function heatAnswer({
  shop,
  piece,
  simulated,
  stages,
  next,
  suspects,
  overruled,
}: HeatAsked): PieceHeat {
  const heats = shop.heats(piece, simulated);
  const visits = shop.visits(simulated).toSorted((a, b) => b.toUtcMs - a.toUtcMs);
  const here = visits.filter((one) => one.spot?.piece === piece.id || spotOf(one)?.piece === piece.id);
  const nowhere = visits.filter((one) => spotOf(one) === null);
  const overruling = lastNote(shop.shop, piece, 'overruled');
  return {
    piece,
    revision: shop.revision,
    areas: Object.fromEntries(piece.areas.map(({ id }) => [id, areaAnswer(heatOf(heats, id))])),
    sides: piece.sides.map((_, i) => {
      const side: SideId = i === 0 ? 1 : 2;
      const tight = lastNote(shop.shop, piece, 'tight', (note) => note.side === side);
      return {
        ...sideHeat(piece, heats, side),
        tight: tight === null ? null : { by: tight.note.by, at: utc(tight.atUtcMs) },
        capC: overruled ? null : capC(piece, heats, stages, side),
      };
    }),
    balance: balanceOf(piece, heats),
    overruled:
      overruling === null
        ? null
        : { by: overruling.note.by, why: overruling.note.why, at: utc(overruling.atUtcMs) },
    next,
    visits: here.slice(0, LISTED).map(visitAnswer),
    unassigned: nowhere.slice(0, LISTED).map(visitAnswer),
    suspects: [...suspects],
  };
}

const utc = (ms: number): string => new Date(ms).toISOString();

function areaAnswer({ lastUtcMs, ...had }: AreaHeat): PieceHeat['areas'][string] {
  return { ...had, lastAt: lastUtcMs === null ? null : utc(lastUtcMs) };
}

function visitAnswer(visit: KeptVisit): VisitAnswer {
  const { ironId: _id, ironName, fromUtcMs, toUtcMs, spot, corrected, takenBack: _, ...told } = visit;
  return {
    ...told,
    at: utc(fromUtcMs),
    lengthMs: toUtcMs - fromUtcMs,
    iron: ironName,
    place: visitPlaceOf(spot),
    corrected:
      corrected === undefined
        ? null
        : { place: visitPlaceOf(corrected.spot), by: corrected.by, at: utc(corrected.atUtcMs) },
  };
}
