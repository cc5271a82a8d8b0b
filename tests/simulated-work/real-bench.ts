import type { Seed } from '../../daemon/probe/simulated/random.ts';
import {
  type Worker,
  type WorkIronId,
  type WorkPiece,
  workIrons,
} from '../../daemon/probe/simulated/worker/worker.ts';
import { Refusal } from '../../daemon/refusal.ts';
import { ironInHand, ironWorkingOn } from '../../daemon/watching/shop/in-hand.ts';
import { type Known, type Meant, markOf, placeMark, takenUpMark } from '../../daemon/watching/shop/marks.ts';
import { mayBeInUse } from '../../daemon/watching/shop/work-acts.ts';
import { areaHeatsOf } from '../../shared/heat/work/area-heats.ts';
import { type At, noFacts, type PieceFacts } from '../../shared/heat/work/at.ts';
import { pieceFacts, sameFacts } from '../../shared/heat/work/piece-facts.ts';
import { keptVisit } from '../../shared/heat/work/visit.ts';
import type { WorkAct } from '../../shared/messages/piece.ts';
import type { Piece } from '../../shared/piece/piece.ts';
import { emptyShop, foldShop, visitsNow } from '../../shared/shop/shop.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Mark } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { checkedLevels } from './motion-check.ts';
import { mapOf } from './pieces.ts';
import { type ForIron, type Hear, lagKnown, type WatchOptions } from './watch.ts';

/**
 * What the program makes of the worker's words, by its own rules but without its clock and its book: alarms are seen when
 * the worker has a hand free, and every iron is recorded.
 */
export interface RealBench {
  readonly hear: Hear;
  /** What follows from a step of a watch: what the watches have to know of the piece in hand. */
  readonly follow: (iron: WorkIronId, found: readonly FoundEntry[], states: States) => readonly ForIron[];
}

type States = Readonly<Record<WorkIronId, WatchState>>;

function realBench({ pieces }: Worker): RealBench {
  let shop = emptyShop;
  let taken: WorkIronId | null = null;
  const maps = new WorkedMaps(pieces);
  const known: Known = {
    pieceOf: (id) => maps.of(id),
    visits: () => visitsNow(shop),
    // The worker knows by heart what comes next.
    next: () => null,
  };

  const markOfAct = (act: WorkAct, iron: WorkIronId, states: States): Mark | null => {
    const meant = meantBy(iron, states);
    const before = ironInHand(watchesOf(states), taken);
    taken = iron;
    try {
      if (act.kind === 'in-hand')
        return takenUpMark(meant, before === null ? null : meantBy(before.iron.id, states), known);
      if (act.kind !== 'piece') return markOf(act, meant, known);
      return markOf(
        { ...act, piece: maps.takeUp(act.piece, states[iron].work.stageId === 'tack') },
        meant,
        known,
      );
    } catch (error) {
      // What was said by mistake is refused, as at the page.
      if (!(error instanceof Refusal)) throw error;
      return null;
    }
  };

  const hear: Hear = ({ atS, iron, act }, states) => {
    const commandId = `m${Math.round(atS * 1000)}`;
    const others = workIrons.filter((one) => one !== iron && mayBeInUse(states[one].work, true));
    const mark = markOfAct(act, iron, states);
    const rests = act.kind === 'in-hand' ? others : [];
    return [
      ...seenAlarms(states, commandId),
      ...(mark === null ? [] : [markFor(iron, mark, commandId)]),
      ...rests.map((one) => markFor(one, placeMark('on-rest'), `${commandId}-${one}`)),
    ];
  };

  const factsOf = (iron: WorkIronId, states: States): PieceFacts => {
    const { work, settings } = states[iron];
    if (work.at === null || settings === null) return noFacts;
    const piece = maps.of(work.at.piece);
    return pieceFacts({
      piece,
      heats: areaHeatsOf(piece, visitsNow(shop)),
      stages: settings.schedule.stages,
      side: work.at.side,
      overruled: false,
      tells: ironWorkingOn(piece.id, watchesOf(states), taken)?.iron.id === iron,
    });
  };

  let atBefore: Readonly<Record<WorkIronId, At | null>> = { big: null, small: null };
  const follow: RealBench['follow'] = (iron, found, states) => {
    const visits = found.flatMap(({ finding }) => (finding.kind === 'visit' ? [finding.visit] : []));
    for (const visit of visits) {
      const session = { id: `of-${iron}`, ironId: iron, ironName: iron, simulated: true, originUtcMs: 0 };
      shop = foldShop(shop, { kind: 'visit', visit: keptVisit(visit, session) });
    }
    const moved = workIrons.some((one) => states[one].work.at !== atBefore[one]);
    if (visits.length === 0 && !moved) return [];
    atBefore = { big: states.big.work.at, small: states.small.work.at };
    return workIrons.flatMap((one): readonly ForIron[] => {
      const facts = factsOf(one, states);
      return sameFacts(facts, states[one].work.facts)
        ? []
        : [{ iron: one, input: { kind: 'piece-facts', facts } }];
    });
  };
  return { hear, follow };
}

/** The maps of the pieces that the worker has begun: each round of tacking begins a new piece. */
class WorkedMaps {
  readonly #pieces: readonly WorkPiece[];
  readonly #maps = new Map<string, Piece>();
  readonly #turns = new Map<string, number>();

  constructor(pieces: readonly WorkPiece[]) {
    this.#pieces = pieces;
  }

  of(id: string): Piece {
    const map = this.#maps.get(id);
    if (map === undefined) throw new Refusal('unknown', `no map ${id}`);
    return map;
  }

  /** The id of the map of a piece that the worker names. */
  takeUp(name: string, begins: boolean): string {
    const work = this.#pieces.find(({ id }) => id === name);
    if (work === undefined) return name;
    const before = this.#turns.get(name) ?? 0;
    const turn = before === 0 || begins ? before + 1 : before;
    const map = mapOf(work, turn);
    this.#turns.set(name, turn);
    this.#maps.set(map.id, map);
    return map.id;
  }
}

const watchesOf = (states: States) => workIrons.map((id) => ({ iron: { id }, state: states[id] }));

function meantBy(iron: WorkIronId, states: States): Meant {
  const { settings, work } = states[iron];
  if (settings === null) throw new Error('a watch without settings');
  return { iron: settings.iron, at: work.at };
}

const markFor = (iron: WorkIronId, mark: Mark, commandId: string): ForIron => ({
  iron,
  input: { kind: 'mark', commandId, mark },
});

/** Whoever says something sees what has come up, at either iron. */
const seenAlarms = (states: States, commandId: string): readonly ForIron[] =>
  workIrons.flatMap((iron) =>
    Object.values(states[iron].alarms)
      .filter(({ state }) => state === 'unacknowledged' || state === 'returned-unacknowledged')
      .map(({ kind, probe }): ForIron => {
        const alarm = { kind, probe };
        return { iron, input: { kind: 'acknowledge', commandId: `${commandId}-${kind}`, alarm } };
      }),
  );

/** Area of the soles, cm2, and the cement limit, degC: DEMO DATA. */
const SOLE_CM2 = { small: 45, big: 140 } as const;
const CEMENT_LIMIT_C = 149;

/** Everything known: lags measured, motion checked, maps with sizes, soles, a cement limit. */
export function onMaps(worker: Worker, seed: Seed): WatchOptions {
  const { hear, follow } = realBench(worker);
  const settings: NonNullable<WatchOptions['settings']> = (iron) => {
    const { probes, schedule, ...known } = lagKnown(iron, worker);
    const levels = checkedLevels(worker, iron, seed);
    const motion = levels === null ? null : { ...levels, checkedAt: '2026-03-01T08:00:00Z' };
    return {
      ...known,
      iron: { ...known.iron, soleCm2: SOLE_CM2[iron] },
      probes: probes.map((probe) => ({ ...probe, motion })),
      schedule: { ...schedule, cementLimitC: CEMENT_LIMIT_C },
    };
  };
  return { hear, follow, settings };
}
