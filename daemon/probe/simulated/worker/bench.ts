import type { SideId } from '../../../../shared/piece/piece.ts';
import { type Draw, drawOf } from '../draw.ts';
import type { Seed } from '../random.ts';
import type { IronPlace } from '../scenario.ts';
import type { Busy, Doing } from './doing.ts';
import { type SaidMark, sayOf } from './marks.ts';
import { type Round, type Worker, type WorkIronId, type WorkPiece, workIrons } from './worker.ts';

/** The bench as it is gone through: how it stands now, and what has been done and said so far. All times s, INVENTED. */
interface Bench {
  readonly worker: Worker;
  readonly draw: Draw;
  tS: number;
  inHand: WorkIronId | null;
  up: SideId;
  /** When each iron is as hot as its dial asks for. */
  readonly ready: Record<WorkIronId, number>;
  readonly doings: Record<WorkIronId, Doing[]>;
  readonly person: { readonly atS: number; readonly is: Busy }[];
  readonly said: SaidMark[];
}

/** What has been done and said by the end. */
export interface Done {
  readonly doings: Readonly<Record<WorkIronId, readonly Doing[]>>;
  readonly person: readonly { readonly atS: number; readonly is: Busy }[];
  readonly said: readonly SaidMark[];
}

type Spot = NonNullable<Doing['spot']>;

/** How long a plate takes to a setting: from cold, further up, and down, where it only loses heat. */
const WARM_UP_S = [240, 420] as const;
const TURNED_UP_S = [120, 240] as const;
const TURNED_DOWN_S = [420, 560] as const;
/** Cloth under an iron that rests is soon as hot as it, and draws this much of what fresh cloth does. */
const HOT_CLOTH_DRAWS = 0.25;

/** Between two marks, s. */
const BETWEEN_MARKS_S = 0.4;

const atStart: Doing = { atS: 0, place: 'on-rest', still: true, spot: null, dialC: null, draws: 1 };

/** Goes through the worker's rounds until the time is over. */
export function workAt(worker: Worker, seed: Seed): Done {
  const bench: Bench = {
    worker,
    draw: drawOf(seed),
    tS: 5,
    inHand: null,
    up: 1,
    ready: { small: 0, big: 0 },
    doings: { small: [atStart], big: [atStart] },
    person: [{ atS: 0, is: 'working' }],
    said: [],
  };
  for (const iron of workIrons)
    setFor(
      bench,
      worker.rounds.find((r) => r.iron === iron),
    );
  while (bench.tS < worker.lengthS)
    for (const piece of worker.pieces) {
      bench.up = piece.sides[0] ?? 1;
      goOn(bench, 20, 90);
      for (const [i, round] of worker.rounds.entries()) doRound(bench, piece, round, i);
    }
  // The last piece is broken off where the time is over.
  const inTime = <T extends { readonly atS: number }>(all: readonly T[]): readonly T[] =>
    all.filter(({ atS }) => atS < worker.lengthS);
  return {
    doings: { small: inTime(bench.doings.small), big: inTime(bench.doings.big) },
    person: inTime(bench.person),
    said: inTime(bench.said).toSorted((a, b) => a.atS - b.atS),
  };
}

function goOn(bench: Bench, low: number, high: number): void {
  bench.tS += bench.draw.between(low, high);
}

function say(bench: Bench, iron: WorkIronId, act: SaidMark['act'], sameSide: WorkPiece['areas'] = []): void {
  const marks = sayOf({ atS: bench.tS, iron, act }, sameSide, bench.worker.mistakes, bench.draw);
  const [first] = marks;
  if (first === undefined) return;
  // With one finger, one after the other: what was done first is said first.
  const laterS = Math.max(0, (bench.said.at(-1)?.atS ?? 0) + BETWEEN_MARKS_S - first.atS);
  bench.said.push(...marks.map((mark) => ({ ...mark, atS: mark.atS + laterS })));
}

function put(bench: Bench, iron: WorkIronId, now: Partial<Omit<Doing, 'atS'>>): void {
  const { dialC } = bench.doings[iron].at(-1) ?? atStart;
  const place: IronPlace = now.place ?? 'on-rest';
  bench.doings[iron].push({
    ...atStart,
    still: place === 'on-rest',
    dialC,
    ...now,
    place,
    atS: bench.tS,
  });
}

/** Turns the dial for a round, the iron on its rest, and says the stage. */
function setFor(bench: Bench, round: Round | undefined): void {
  if (round === undefined) return;
  const { iron, stageId } = round;
  const wasC = bench.doings[iron].at(-1)?.dialC ?? null;
  const dialC = bench.worker.irons[iron].dialC[stageId] ?? null;
  say(bench, iron, { kind: 'stage', stageId });
  if (dialC === null || dialC === wasC) return;
  put(bench, iron, { dialC });
  const takesS: readonly [number, number] =
    wasC === null ? WARM_UP_S : dialC > wasC ? TURNED_UP_S : TURNED_DOWN_S;
  bench.ready[iron] = bench.tS + bench.draw.between(...takesS);
}

function doRound(bench: Bench, piece: WorkPiece, round: Round, index: number): void {
  const { iron, kinds } = round;
  const { rounds } = bench.worker;
  const areas = piece.areas.filter((a) => kinds.includes(a.kind));
  if (bench.tS < bench.ready[iron]) bench.tS = bench.ready[iron];
  let begun = false;
  for (const side of bench.up === 2 ? piece.sides.toReversed() : piece.sides) {
    const own = areas.filter((a) => a.side === side);
    if (own.length === 0) continue;
    turnTo(bench, iron, side);
    takeUp(bench, iron);
    if (!begun) say(bench, iron, { kind: 'piece', piece: piece.id, side });
    begun = true;
    doSide(bench, piece, iron, own);
    park(bench);
    pause(bench);
  }
  park(bench);
  const later = [...rounds.slice(index + 1), ...rounds.slice(0, index + 1)];
  setFor(
    bench,
    later.find((r) => r.iron === iron),
  );
}

function doSide(bench: Bench, piece: WorkPiece, iron: WorkIronId, areas: WorkPiece['areas']): void {
  // Some worker says each area, another the whole lap at its end.
  const byLaps = bench.draw.chance(0.3);
  for (const area of areas) {
    takeUp(bench, iron);
    const spot: Spot = { piece: piece.id, side: area.side, area: area.id };
    const sayArea = (): void => {
      if (!byLaps) say(bench, iron, { kind: 'area', area: area.id }, areas);
    };
    visit(bench, iron, spot, area.kind, sayArea);
    if (bench.draw.chance(0.15)) {
      park(bench);
      goOn(bench, 8, 90);
    }
  }
  if (byLaps) say(bench, iron, { kind: 'lap-done' });
}

/** Passes over one area with short lifts between them, until it has had its time. */
function visit(
  bench: Bench,
  iron: WorkIronId,
  spot: Spot,
  kind: WorkPiece['areas'][number]['kind'],
  sayArea: () => void,
): void {
  const { draw } = bench;
  // Over a bonded edge there is a frame under the cloth.
  const draws = kind === 'cloth' ? draw.between(0.8, 1.2) : draw.between(1, 1.6);
  const untilS = bench.tS + (kind === 'cloth' ? draw.between(20, 60) : draw.between(10, 30));
  sayArea();
  do {
    pass(bench, iron, spot, draws);
    put(bench, iron, { place: 'lifted' });
    goOn(bench, 1, 5);
  } while (bench.tS < untilS);
}

/** One pass; now and then it stops for a moment, and by mistake for longer. */
function pass(bench: Bench, iron: WorkIronId, spot: Spot, draws: number): void {
  const { draw, worker } = bench;
  const passS = draw.between(6, 25);
  const moving = { place: 'on-work', still: false, spot, draws } as const;
  put(bench, iron, moving);
  const rests = draw.chance((worker.mistakes.spotsPerHour * passS) / 3600);
  const hesitates = draw.chance(0.3);
  if (!rests && !hesitates) {
    bench.tS += passS;
    return;
  }
  const beforeS = draw.between(0.2, 0.8) * passS;
  bench.tS += beforeS;
  put(bench, iron, { ...moving, still: true, draws: rests ? HOT_CLOTH_DRAWS * draws : draws });
  bench.tS += rests ? draw.between(...worker.mistakes.spotS) : draw.between(0.4, 1.5);
  put(bench, iron, moving);
  bench.tS += passS - beforeS;
}

function takeUp(bench: Bench, iron: WorkIronId): void {
  if (bench.inHand === iron) return;
  park(bench);
  put(bench, iron, { place: 'lifted' });
  bench.inHand = iron;
  say(bench, iron, { kind: 'in-hand' });
  goOn(bench, 1, 4);
}

function park(bench: Bench): void {
  const { inHand } = bench;
  if (inHand === null) return;
  put(bench, inHand, { place: 'on-rest' });
  say(bench, inHand, { kind: 'on-rest' });
  bench.inHand = null;
  goOn(bench, 1, 6);
}

function turnTo(bench: Bench, iron: WorkIronId, side: SideId): void {
  if (bench.up === side) return;
  park(bench);
  goOn(bench, 15, 60);
  bench.up = side;
  say(bench, iron, { kind: 'turned' });
}

/** Coffee now and then; some walk off and forget the iron. */
function pause(bench: Bench): void {
  const { draw, worker, person } = bench;
  if (!draw.chance(0.2)) return;
  const away = draw.chance(worker.mistakes.walksAway);
  person.push({ atS: bench.tS, is: away ? 'away' : 'coffee' });
  bench.tS += away ? draw.between(...worker.mistakes.awayS) : draw.between(180, 540);
  person.push({ atS: bench.tS, is: 'working' });
}
