import { cellsOf } from '../../piece/cells.ts';
import { type Area, isBonded, otherSide, type Piece, type SideId, sideIds } from '../../piece/piece.ts';
import type { HeatStage } from '../schedule.ts';
import type { AreaHeats } from './area-heat.ts';
import { heatOf } from './area-heats.ts';
import { EVEN_LAPS, endsOf } from './balance.ts';
import { skipOrder } from './corput.ts';
import { clothOf, lowestStage } from './order.ts';
import { compareLevels, levelOf } from './reached.ts';
import { meanBySize } from './sides.ts';

/**
 * Where to iron next. It looks at what the areas have had and at where the iron is, and remembers nothing: who goes
 * somewhere else gets the next proposal from there.
 *
 * - A lap over a side is finished before the piece is turned over, and the sides are changed after it (common practice, no
 *   source). Turning is a bother: on the way up to the last stage the first lap of a pair is ironed on the side that is
 *   up; and in the midst of a lap it is asked for only where that side is ahead by more than a turn is worth.
 * - Within a lap the iron skips about (see `corput.ts`), and goes first to the end that is behind.
 * - Who goes over cloth once more begins the next lap: the rest is proposed until it has had as much.
 */

/** Why an area is proposed. */
export const nextWhys = ['even-out', 'skip-about', 'change-sides', 'first-shrink', 'finish-lap'] as const;
export type NextWhy = (typeof nextWhys)[number];

export interface Next {
  readonly side: SideId;
  readonly area: string;
  readonly why: NextWhy;
}

export interface NextInput {
  readonly piece: Piece;
  /** What its areas have had; the visit that goes on may be counted or not. */
  readonly heats: AreaHeats;
  /** Of the heat schedule. */
  readonly stages: readonly HeatStage[];
  /** The stage that is being worked; null: none, and nothing is proposed. */
  readonly stage: HeatStage | null;
  /** Where the iron in hand is; null: not on this piece. */
  readonly at: { readonly side: SideId; readonly area: string | null } | null;
  /** Hotter than this on the side that is up would be out of order, degC (`capC`); null: nothing is, or it was overruled. */
  readonly capC: number | null;
  /** The highest plate temperature over edges and tapes, degC; null: not set. */
  readonly cementLimitC: number | null;
  /** How many laps the stage is to have. */
  readonly laps?: number;
}

/** A turn is worth a difference of so many laps (our own choice): up to there sides count as even. */
const TURN_LAPS = EVEN_LAPS;
/**
 * The order of skipping gives way once an end is behind the other by more than this part of one lap over one area of it
 * (our own choice): one area more is then evened out, and ends of unequal areas don't keep the middle waiting.
 */
const END_SHARE = 0.5;
/** Means of laps by size are not exact. */
const ROUNDING = 1e-9;

/** The area to iron next; null where no other than the one that the iron is on lacks the stage, or none is being worked. */
export function proposeNext(input: NextInput): Next | null {
  const { piece, stage, at, capC } = input;
  if (stage === null) return null;
  const look = lookAt(input, stage);
  const here = at?.side ?? lastWorked(look) ?? 1;
  if (capC !== null && stage.lowC >= capC) return firstShrink(input, look, here);
  const side = sideFor(input, look, here, stage);
  if (side === null) return null;
  const area = pick(piece, side);
  if (area === null) return null;
  const turns = side.side !== here;
  const ahead = turns && meanOf(look, here) - meanOf(look, side.side) > TURN_LAPS + ROUNDING;
  if (turns) return { side: side.side, area: area.id, why: ahead ? 'even-out' : 'change-sides' };
  return { side: side.side, area: area.id, why: whyHere(piece, side, area) };
}

/** A side as the stage that is being worked sees it. */
interface SideLook {
  readonly side: SideId;
  /** Its open cloth, with the laps of each at this stage, the one that goes on included: all that are wanted above it. */
  readonly cloth: readonly Counted[];
  /** Edges and tapes that are still to have this stage. */
  readonly bonded: readonly Area[];
  /** The area that the iron is on: it is having its lap. */
  readonly at: string | null;
  /** Laps that all of it is to have. */
  readonly wanted: number;
  /** Laps that all of its cloth has had, up to those wanted; what the iron is on is not waited for. */
  readonly done: number;
  readonly lastUtcMs: number | null;
}

interface Counted {
  readonly area: Area;
  readonly laps: number;
}

type Look = readonly SideLook[];

function lookAt(input: NextInput, stage: HeatStage): Look {
  const { piece, heats, at } = input;
  const sides = sideIds.slice(0, piece.sides.length);
  const lapsOf = ({ id }: Area): number => {
    const heat = heatOf(heats, id);
    const over = compareLevels(heat.reached, stage);
    return over < 0 ? 0 : over > 0 ? Number.POSITIVE_INFINITY : heat.lapsAtStage;
  };
  const laps = sides.flatMap((side) => clothOf(piece, side).map(lapsOf)).filter(Number.isFinite);
  const wanted = Math.max(input.laps ?? 1, ...laps);
  return sides.map((side) => {
    const had = clothOf(piece, side).map((area) => ({ area, laps: Math.min(lapsOf(area), wanted) }));
    const waitedFor = had.filter(({ area }) => area.id !== at?.area).map((c) => c.laps);
    const done = Math.min(wanted, ...waitedFor);
    const touched = piece.areas.flatMap((a) =>
      a.side === side ? (heatOf(heats, a.id).lastUtcMs ?? []) : [],
    );
    return {
      side,
      cloth: had.map((c) =>
        c.area.id === at?.area ? { ...c, laps: withThisLap(c.laps, done, waitedFor) } : c,
      ),
      bonded: takesBonded(input, stage)
        ? piece.areas.filter((a) => a.side === side && isBonded(a) && a.id !== at?.area && lapsOf(a) < 1)
        : [],
      at: at?.area ?? null,
      wanted,
      done,
      lastUtcMs: touched.length === 0 ? null : Math.max(...touched),
    };
  });
}

/**
 * Laps of the area that the iron is on, with the one that goes on. It is counted already unless the area has had fewer
 * than all the others, or as many as those that still wait for the lap that is going on.
 */
function withThisLap(laps: number, done: number, others: readonly number[]): number {
  const isCounted = laps > done || (laps === done && done > 0 && others.every((other) => other === done));
  return isCounted || others.length === 0 ? laps : laps + 1;
}

/** Edges and tapes are proposed up to the cement limit; where that is not set, at the lowest level only. */
function takesBonded({ stages, cementLimitC }: NextInput, stage: HeatStage): boolean {
  if (cementLimitC !== null) return stage.targetC <= cementLimitC;
  const lowest = lowestStage(stages);
  return lowest !== null && levelOf(stage) <= levelOf(lowest);
}

const lastWorked = (look: Look): SideId | null =>
  look.reduce<SideLook | null>(
    (last, side) =>
      side.lastUtcMs !== null && (last?.lastUtcMs == null || side.lastUtcMs > last.lastUtcMs) ? side : last,
    null,
  )?.side ?? null;

/** The stage is out of order on this side: what this side, then the other, still lacks of the lowest level. */
function firstShrink({ piece, heats, stages, at }: NextInput, look: Look, here: SideId): Next | null {
  const lowest = lowestStage(stages);
  if (lowest === null) return null;
  for (const side of look.toSorted((a) => (a.side === here ? -1 : 1))) {
    const lacking = clothOf(piece, side.side).filter(
      ({ id }) => id !== at?.area && compareLevels(heatOf(heats, id).reached, lowest) < 0,
    );
    const area = firstInOrder(side, lacking);
    if (area !== null) return { side: side.side, area: area.id, why: 'first-shrink' };
  }
  return null;
}

/** The side to go on with; null where both have had all. */
function sideFor({ piece, stages }: NextInput, look: Look, side: SideId, stage: HeatStage): SideLook | null {
  const here = look.find((l) => l.side === side);
  const there = look.find((l) => l.side === otherSide(piece, side));
  if (here === undefined) return null;
  if (there === undefined || !hasPending(there)) return hasPending(here) ? here : null;
  if (!hasPending(here)) return there;
  if (meanOf(look, side) - meanOf(look, there.side) > TURN_LAPS + ROUNDING) return there;
  // Edges and tapes of a side are ironed before it is turned over, however far its cloth is.
  if (here.done > there.done) return here.bonded.length > 0 ? here : there;
  if (here.done < there.done || isBegun(here) || isBegun(there) || here.bonded.length > 0) return here;
  const last = stages.every((s) => compareLevels(s, stage) <= 0);
  return last && here.done > 0 && lastWorked(look) === side ? there : here;
}

const hasPending = (side: SideLook): boolean => pendingOf(side).length > 0;
const isBegun = ({ cloth, done }: SideLook): boolean => cloth.some(({ laps }) => laps > done);

/** What the lap that is going on still lacks: cloth first, then edges and tapes. */
function pendingOf({ cloth, bonded, at, wanted, done }: SideLook): readonly Area[] {
  const lacking = cloth.filter(({ area, laps }) => area.id !== at && laps < wanted && laps <= done);
  return lacking.length > 0 ? lacking.map((c) => c.area) : bonded;
}

const meanOf = (look: Look, side: SideId): number =>
  meanBySize(look.find((l) => l.side === side)?.cloth ?? []);

/** The area of a side that comes next: at the end that is behind, and there by the order of skipping. */
function pick(piece: Piece, side: SideLook): Area | null {
  const pending = pendingOf(side);
  const behind = endBehind(piece, side);
  const atEnd = pending.filter((area) => behind.includes(area));
  return firstInOrder(side, atEnd.length > 0 ? atEnd : pending);
}

/** The areas of the end that is behind the other; none where neither is by much. */
function endBehind(piece: Piece, { side, cloth }: SideLook): readonly Area[] {
  const { first, last } = endsOf(piece, side);
  if (first.length === 0 || last.length === 0) return [];
  const lead =
    meanBySize(cloth.filter((c) => first.includes(c.area))) -
    meanBySize(cloth.filter((c) => last.includes(c.area)));
  if (Math.abs(lead) <= END_SHARE * Math.max(largestShare(first), largestShare(last))) return [];
  return lead > 0 ? last : first;
}

/** What the largest of some areas is of all of them. */
const largestShare = (areas: readonly Area[]): number =>
  Math.max(...areas.map(cellsOf)) / areas.reduce((sum, area) => sum + cellsOf(area), 0);

/** The first of some areas by the order of skipping over the whole side, from end to end. */
function firstInOrder({ cloth }: SideLook, among: readonly Area[]): Area | null {
  const inRow = alongSide(among.some(isBonded) ? among : cloth.map((c) => c.area));
  for (const place of skipOrder(inRow.length)) {
    const area = inRow[place];
    if (area !== undefined && among.includes(area)) return area;
  }
  return null;
}

/** From the first end to the last, by the middles of the areas; of one column from the upper to the lower. */
const alongSide = (areas: readonly Area[]): readonly Area[] =>
  areas.toSorted((a, b) => 2 * a.column + a.columns - 2 * b.column - b.columns || a.row - b.row);

function whyHere(piece: Piece, side: SideLook, area: Area): NextWhy {
  const pending = pendingOf(side);
  if (pending.length === 1) return 'finish-lap';
  return firstInOrder(side, pending) === area || endBehind(piece, side).length === 0
    ? 'skip-about'
    : 'even-out';
}
