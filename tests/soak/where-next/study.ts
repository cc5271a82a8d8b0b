import type { AreaHeats } from '../../../shared/heat/work/area-heat.ts';
import { type Ends, endsOf } from '../../../shared/heat/work/balance.ts';
import { proposeNext } from '../../../shared/heat/work/next.ts';
import { capC, clothOf } from '../../../shared/heat/work/order.ts';
import { merged } from '../../../shared/piece/edit.ts';
import { type Area, type Piece, type SideId, sideIds } from '../../../shared/piece/piece.ts';
import { heatAt, pieceOf, stageOf, stages } from '../../unit/heat/work/demo.ts';
import { drawer } from '../../unit/watch/support/worked-iron.ts';

/**
 * Ways of going over a piece with two sides, in two stages of two laps each: simulated, without an iron. All go over the
 * same areas as often, each of which takes its own time; what differs is the order, and how often the piece is turned.
 */

const TURN_S = 30;
/** To bring the iron from one end of the piece to the other, s. */
const CARRY_S = 2;
const STAGE_IDS = ['initial', 'final'] as const;
const LAPS = 2;

export interface Job {
  readonly piece: Piece;
  /** How long a lap over an area takes, s. */
  readonly areaS: Readonly<Record<string, number>>;
}

/** What one way of going over one piece came to. Differences are in laps of any stage, by the size of the areas. */
export interface Outcome {
  readonly way: string;
  readonly visits: number;
  readonly turns: number;
  readonly timeS: number;
  /** The largest there ever was between the sides, and between the ends of a side. */
  readonly worstSides: number;
  readonly worstEnds: number;
  /** Between the ends of the side that is behind most, over the time. */
  readonly meanEnds: number;
}

/** A piece by seed: 3 to 60 areas of cloth a side in one to four rows, some merged, 5 to 20 s for a lap over each. */
export function jobOf(seed: number): Job {
  const draw = drawer(seed * 7919);
  const rows = 1 + Math.floor(draw(0, 4));
  const columns = Math.max(Math.ceil(3 / rows), Math.min(18, Math.floor(draw(3, 61) / rows)));
  let piece = pieceOf(rows, columns);
  const merges = rows * columns > 6 ? Math.floor(draw(0, 4)) : 0;
  for (let n = 0; n < merges; n += 1) piece = withMerge(piece, draw);
  const areaS = Object.fromEntries(piece.areas.map(({ id }) => [id, draw(5, 20)]));
  return { piece, areaS };
}

/** Two neighbours of one side made one, where chance finds such. */
function withMerge(piece: Piece, draw: (low: number, high: number) => number): Piece {
  const cloth = clothOf(piece, draw(0, 1) < 0.5 ? 1 : 2);
  const one = cloth[Math.floor(draw(0, cloth.length))];
  const other = cloth.find(
    (a) => one !== undefined && a.row === one.row && a.column === one.column + one.columns,
  );
  if (one === undefined || other === undefined) return piece;
  const edited = merged(piece, [one.id, other.id]);
  return edited.kind === 'done' ? { ...piece, ...edited.draft } : piece;
}

type Place = { readonly side: SideId; readonly area: string };
/** Where a worker goes next in a stage; null: it is done. */
type Choice = (heats: AreaHeats, stage: string, at: Place | null) => Place | null;

/** As proposed, each time. */
const asProposed =
  ({ piece }: Job): Choice =>
  (heats, id, at) => {
    const cap = capC(piece, heats, stages, at?.side ?? 1);
    // No cement limit lets edges be ironed: what is compared is the open cloth.
    const limits = { capC: cap, cementLimitC: 0, laps: LAPS };
    return proposeNext({ piece, heats, stages, stage: stageOf(id), at, ...limits });
  };

/** As proposed, but for one time in three, when the worker takes any area of the side that still lacks a lap. */
function wilful(job: Job, seed: number): Choice {
  const draw = drawer(seed * 104_729);
  const proposed = asProposed(job);
  return (heats, id, at) => {
    const next = proposed(heats, id, at);
    if (next === null || draw(0, 1) > 1 / 3) return next;
    const lacking = clothOf(job.piece, next.side).filter(
      (a) => lapsIn(heats, a, id) < LAPS && a.id !== at?.area,
    );
    return { side: next.side, area: lacking[Math.floor(draw(0, lacking.length))]?.id ?? next.area };
  };
}

/**
 * From end to end, area by area, then the other side. `turning` goes back to the first side for each lap; otherwise the
 * next lap begins on the side that is up.
 */
function along({ piece }: Job, turning: boolean): Choice {
  const inRow = (side: SideId): readonly Area[] =>
    clothOf(piece, side).toSorted((a, b) => a.column - b.column || a.row - b.row);
  return (heats, id, at) => {
    const first = turning ? 1 : startOf(heats, id, piece, at);
    const order: readonly SideId[] = first === 1 ? [1, 2] : [2, 1];
    for (let lap = 1; lap <= LAPS; lap += 1)
      for (const side of lap % 2 === 0 && !turning ? order.toReversed() : order) {
        const area = inRow(side).find((a) => lapsIn(heats, a, id) < lap);
        if (area !== undefined) return { side, area: area.id };
      }
    return null;
  };
}

/** The side on which a stage was begun, or is to be: the one that is up. */
function startOf(heats: AreaHeats, id: string, piece: Piece, at: Place | null): SideId {
  const begun = sideIds.filter((side) => clothOf(piece, side).some((a) => lapsIn(heats, a, id) > 0));
  if (begun.length === 0) return at?.side ?? 1;
  if (begun.length === 1) return begun[0] ?? 1;
  const firsts = sideIds.map((side) =>
    Math.min(...clothOf(piece, side).map((a) => heats[a.id]?.lastUtcMs ?? 0)),
  );
  const full = sideIds.filter((side) => clothOf(piece, side).every((a) => lapsIn(heats, a, id) >= 1));
  if (full.length === 1) return full[0] ?? 1;
  return (firsts[0] ?? 0) <= (firsts[1] ?? 0) ? 1 : 2;
}

const lapsIn = (heats: AreaHeats, { id }: Area, stage: string): number =>
  heats[id]?.reached?.id === stage ? heats[id].lapsAtStage : 0;

/** Every way over one piece. */
export const waysOver = (job: Job, seed: number): readonly Outcome[] => [
  goOver(job, 'as proposed', asProposed(job)),
  goOver(job, 'as proposed, or not', wilful(job, seed)),
  goOver(job, 'along, turning after each lap', along(job, true)),
  goOver(job, 'along, turning as seldom', along(job, false)),
];

/** Laps of any stage that areas have had, by their size. */
const meanLaps = (areas: readonly Area[], heats: AreaHeats): number => {
  const cells = areas.reduce((sum, a) => sum + a.rows * a.columns, 0);
  return areas.reduce((sum, a) => sum + a.rows * a.columns * (heats[a.id]?.laps ?? 0), 0) / cells;
};

/** How far the ends of a side are apart; one that is a single area from end to end has none. */
const apart = ({ first, last }: Ends, heats: AreaHeats): number =>
  first.length === 0 || last.length === 0 ? 0 : Math.abs(meanLaps(first, heats) - meanLaps(last, heats));

function goOver({ piece, areaS }: Job, way: string, choose: Choice): Outcome {
  const sides = sideIds.map((side) => ({ cloth: clothOf(piece, side), ...endsOf(piece, side) }));
  const middle = (id: string): number => {
    const area = piece.areas.find((a) => a.id === id);
    return area === undefined ? 0 : (area.column + area.columns / 2) / piece.columns;
  };
  let heats: AreaHeats = {};
  let at: Place | null = null;
  let [visits, turns, timeS, worstSides, worstEnds, endsS] = [0, 0, 0, 0, 0, 0];
  for (const stage of STAGE_IDS)
    for (let next = choose(heats, stage, at); next !== null; next = choose(heats, stage, at)) {
      const turned = at !== null && at.side !== next.side;
      const carried = at === null ? 0 : Math.abs(middle(next.area) - middle(at.area));
      const tookS = (areaS[next.area] ?? 0) + CARRY_S * carried + (turned ? TURN_S : 0);
      const was = heats[next.area];
      const again = was?.reached?.id === stage ? was.lapsAtStage + 1 : 1;
      const laps = { laps: (was?.laps ?? 0) + 1, lapsAtStage: again };
      heats = { ...heats, [next.area]: { ...heatAt(stage, 0), ...laps, lastUtcMs: timeS * 1000 } };
      [visits, turns, timeS] = [visits + 1, turns + Number(turned), timeS + tookS];
      const [one = 0, two = 0] = sides.map(({ cloth }) => meanLaps(cloth, heats));
      worstSides = Math.max(worstSides, Math.abs(one - two));
      const ends = Math.max(...sides.map((side) => apart(side, heats)));
      worstEnds = Math.max(worstEnds, ends);
      endsS += ends * tookS;
      at = next;
    }
  return { way, visits, turns, timeS, worstSides, worstEnds, meanEnds: endsS / timeS };
}

/** One line a way: the worst of all pieces, and the mean over them. */
export function tableText(all: readonly (readonly Outcome[])[]): string {
  const ways = all[0]?.map((o) => o.way) ?? [];
  const lines = ways.map((way) => {
    const own = all.flat().filter((o) => o.way === way);
    const worst = (of: (o: Outcome) => number): string => Math.max(...own.map(of)).toFixed(2);
    const mean = (of: (o: Outcome) => number): string =>
      (own.reduce((sum, o) => sum + of(o), 0) / own.length).toFixed(2);
    const figures = [
      `sides ${worst((o) => o.worstSides)} (${mean((o) => o.worstSides)})`,
      `ends ${worst((o) => o.worstEnds)} (${mean((o) => o.worstEnds)}), over time ${mean((o) => o.meanEnds)}`,
      `turns ${mean((o) => o.turns)}`,
      `${mean((o) => o.timeS / 60)} min`,
    ];
    return `${way.padEnd(30)} ${figures.join('; ')}`;
  });
  return [
    `${all.length} pieces; differences in laps: worst of all (mean of the worst of each)`,
    ...lines,
  ].join('\n');
}
