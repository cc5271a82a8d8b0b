import type { Seed } from '../../daemon/probe/simulated/random.ts';
import type { SaidMark } from '../../daemon/probe/simulated/worker/marks.ts';
import { type Worker, type WorkIronId, workIrons } from '../../daemon/probe/simulated/worker/worker.ts';
import { atOf } from '../../daemon/watching/shop/places.ts';
import { areaHeatsOf } from '../../shared/heat/work/area-heats.ts';
import { type At, noFacts, type PieceFacts } from '../../shared/heat/work/at.ts';
import { balanceOf } from '../../shared/heat/work/balance.ts';
import { imbalanceText } from '../../shared/heat/work/imbalance.ts';
import { capC } from '../../shared/heat/work/order.ts';
import { keptVisit } from '../../shared/heat/work/visit.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import { otherSide, type Piece } from '../../shared/piece/piece.ts';
import { emptyShop, foldShop, visitsNow } from '../../shared/shop/shop.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { AtSaid, Mark } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { checkedLevels } from './motion-check.ts';
import { mapOf } from './pieces.ts';
import { type ForIron, type Hear, lagKnown, type WatchOptions } from './watch.ts';

/**
 * What the program makes of the worker's words, without the program: marks with their places on real maps, alarms that are seen when the worker has a hand free, and what the watches have to know of the piece.
 */
export interface RealBench {
  readonly hear: Hear;
  /** What follows from a step of a watch: what the watches have to know of the piece in hand. */
  readonly follow: (
    iron: WorkIronId,
    found: readonly FoundEntry[],
    states: Readonly<Record<WorkIronId, WatchState>>,
  ) => readonly ForIron[];
}

export function realBench({ pieces }: Worker): RealBench {
  let shop = emptyShop;
  let inHand: WorkIronId | null = null;
  /** The piece of each name that is being worked, and how often one was begun. */
  const maps = new Map<string, { readonly map: Piece; readonly turn: number }>();
  const known = new Map<string, Piece>();

  const ironOf = ({ settings }: WatchState): Iron => {
    if (settings === null) throw new Error('a watch without settings');
    return settings.iron;
  };
  /** Each round of tacking begins a new piece. */
  const pieceOf = (id: string, begins: boolean): Piece | null => {
    const work = pieces.find((p) => p.id === id);
    if (work === undefined) return null;
    const before = maps.get(id);
    if (before !== undefined && !begins) return before.map;
    const turn = (before?.turn ?? 0) + 1;
    const map = mapOf(work, turn);
    maps.set(id, { map, turn });
    known.set(map.id, map);
    return map;
  };

  const onPiece = (state: WatchState, make: (piece: Piece, at: At) => Mark | null): Mark | null => {
    const { at } = state.work;
    const piece = at === null ? undefined : known.get(at.piece);
    return at === null || piece === undefined ? null : make(piece, at);
  };
  const atMark = (said: AtSaid, at: At): Mark => ({ kind: 'at', said, at });

  /** Taken over from the iron that was in hand before, as the program does it. */
  const takeUp = (iron: WorkIronId, states: Readonly<Record<WorkIronId, WatchState>>): Mark => {
    const before = inHand;
    inHand = iron;
    const own = states[iron].work.at;
    const other = before === null || before === iron ? null : states[before].work.at;
    const piece = other === null ? undefined : known.get(other.piece);
    if (other === null || piece === undefined)
      return own === null ? { kind: 'place', place: 'on-work' } : atMark('in-hand', own);
    return atMark('in-hand', atOf(piece, other.side, null, { iron: ironOf(states[iron]), presumed: false }));
  };

  const markOf = ({ iron, act }: SaidMark, states: Readonly<Record<WorkIronId, WatchState>>): Mark | null => {
    const state = states[iron];
    const told = { iron: ironOf(state), presumed: false };
    switch (act.kind) {
      case 'stage':
        return { kind: 'stage', stageId: act.stageId };
      case 'piece': {
        const piece = pieceOf(act.piece, state.work.stageId === 'tack');
        return piece === null ? null : atMark('piece', atOf(piece, act.side ?? 1, null, told));
      }
      case 'area':
        return onPiece(state, (piece) => {
          const area = piece.areas.find(({ id }) => id === act.area);
          return area === undefined ? null : atMark('area', atOf(piece, area.side, area, told));
        });
      case 'turned':
        return onPiece(state, (piece, at) => {
          const side = otherSide(piece, at.side);
          return side === null ? null : atMark('turned', atOf(piece, side, null, told));
        });
      case 'in-hand':
        return takeUp(iron, states);
      case 'on-work':
      case 'off-work':
      case 'on-rest':
        return { kind: 'place', place: act.kind };
      case 'lap-done':
      case 'undo':
        return { kind: act.kind };
      case 'next':
        return null;
    }
  };

  const hear: Hear = (said, states) => {
    const commandId = `m${Math.round(said.atS * 1000)}`;
    const mark = markOf(said, states);
    const other = said.iron === 'big' ? 'small' : 'big';
    const seen = workIrons.flatMap((iron) =>
      Object.values(states[iron].alarms)
        .filter(({ state }) => state === 'unacknowledged' || state === 'returned-unacknowledged')
        .map(({ kind, probe }): ForIron => {
          const alarm = { kind, probe };
          return { iron, input: { kind: 'acknowledge', commandId: `${commandId}-${kind}`, alarm } };
        }),
    );
    const rests: readonly ForIron[] =
      said.act.kind === 'in-hand' && states[other].work.place !== 'on-rest'
        ? [
            {
              iron: other,
              input: {
                kind: 'mark',
                commandId: `${commandId}-${other}`,
                mark: { kind: 'place', place: 'on-rest' },
              },
            },
          ]
        : [];
    return [
      ...seen,
      ...(mark === null ? [] : [{ iron: said.iron, input: { kind: 'mark', commandId, mark } } as const]),
      ...rests,
    ];
  };

  const factsOf = (iron: WorkIronId, { work, settings }: WatchState): PieceFacts => {
    const piece = work.at === null ? undefined : known.get(work.at.piece);
    if (work.at === null || piece === undefined || settings === null) return noFacts;
    const heats = areaHeatsOf(
      piece,
      visitsNow(shop).filter(({ spot }) => spot?.piece === piece.id),
    );
    return {
      capC: capC(piece, heats, settings.schedule.stages, work.at.side),
      // By the iron in hand, as the program has it.
      imbalance: inHand === iron ? imbalanceText(piece, balanceOf(piece, heats)) : '',
    };
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
      const facts = factsOf(one, states[one]);
      const was = states[one].work.facts;
      if (facts.capC === was.capC && facts.imbalance === was.imbalance) return [];
      return [{ iron: one, input: { kind: 'piece-facts', facts } }];
    });
  };
  return { hear, follow };
}

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
