import type { HeatStage } from '../../../shared/heat/schedule.ts';
import { noFacts, type PieceFacts } from '../../../shared/heat/work/at.ts';
import { proposeNext } from '../../../shared/heat/work/next.ts';
import { capC } from '../../../shared/heat/work/order.ts';
import { pieceFacts, sameFacts } from '../../../shared/heat/work/piece-facts.ts';
import { keptVisit, type Visit } from '../../../shared/heat/work/visit.ts';
import { inHandByMotion } from '../../../shared/iron/motion/rest.ts';
import type { Next, WorkLive } from '../../../shared/messages/piece.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import { lastNote } from '../../../shared/shop/shop.ts';
import { motionOf } from '../../../shared/watch/motions.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { currentPieces, type Settings } from '../../settings/settings.ts';
import type { IronWatch } from '../iron-watch.ts';
import { ironInHand, ironWorkingOn } from './in-hand.ts';
import { ShopKeeper } from './shop-keeper.ts';

export interface BenchParts {
  readonly watches: () => readonly IronWatch[];
  readonly settings: () => Settings;
  readonly simulated: () => boolean;
  readonly originUtcMs: number;
  readonly nowMs: () => number;
  readonly coatRevision: () => number;
  /** Told after every change of what is shown of the work. */
  readonly changed: () => void;
}

/**
 * The bench while the program runs: which iron is in hand, and what the pieces have had. What the watches have to know of
 * that comes to them as inputs of their own, after the step that it follows from.
 */
export class Bench {
  readonly shop: ShopKeeper;
  readonly #parts: BenchParts;
  #taken: string | null = null;
  #due = false;

  constructor(parts: BenchParts) {
    this.#parts = parts;
    this.shop = new ShopKeeper(() => {
      parts.changed();
      this.factsSoon();
    });
  }

  inHand(): IronWatch | null {
    return ironInHand(this.#parts.watches(), this.#taken);
  }

  /** The iron that works on a piece; null: none does. The one in hand before others. */
  working(piece: string): IronWatch | null {
    return ironWorkingOn(piece, this.#parts.watches(), this.#taken);
  }

  takeInHand(iron: string): void {
    if (this.#taken === iron) return;
    this.#taken = iron;
    this.#parts.changed();
  }

  /** A visit that a watch has told. */
  hear({ iron, session }: IronWatch, visit: Visit): void {
    const { id: ironId, name: ironName, simulated } = iron;
    const { originUtcMs } = this.#parts;
    const kept = keptVisit(visit, { id: session ?? '', ironId, ironName, simulated, originUtcMs });
    this.shop.take({ kind: 'visit', visit: kept });
  }

  live(): WorkLive {
    const { settings, simulated, coatRevision } = this.#parts;
    return {
      inHand: this.inHand()?.iron.id ?? null,
      recent: [...this.shop.recent(currentPieces(settings()), simulated())],
      heatRevision: this.shop.revision,
      coatRevision: coatRevision(),
      ready: this.shop.ready,
    };
  }

  /** The area that is proposed next to whoever works on this piece with this iron. */
  next({ state, iron }: IronWatch, piece: Piece): Next | null {
    const { settings, work } = state;
    const at = work.at?.piece === piece.id ? work.at : null;
    if (settings === null) return null;
    const { stages, cementLimitC } = settings.schedule;
    const heats = this.shop.heats(piece, iron.simulated);
    return proposeNext({
      piece,
      heats,
      stage: workedStage(state),
      at,
      capC: at === null ? null : this.#capC(piece, heats, stages, at.side),
      stages,
      cementLimitC,
    });
  }

  isOverruled(piece: Pick<Piece, 'id'>): boolean {
    return lastNote(this.shop.shop, piece, 'overruled') !== null;
  }

  /** The iron that its motion says was taken up, where another one is thought to be in hand; null: none. */
  takenUp(): IronWatch | null {
    const watches = this.#parts.watches();
    const known = watches.filter(({ state }) => motionOf(state.motions).is !== 'unknown');
    const before = this.inHand();
    // Of an iron that tells nothing of its motion nobody knows whether it was put down.
    if (known.length < 2 || (before !== null && !known.includes(before))) return null;
    const motions = Object.fromEntries(known.map(({ iron, state }) => [iron.id, motionOf(state.motions)]));
    const iron = inHandByMotion(motions, this.#parts.nowMs(), before?.iron.id ?? null);
    return iron === before?.iron.id ? null : (known.find((one) => one.iron.id === iron) ?? null);
  }

  /** What the watch of an iron has to know of the piece that it works on; asked for once more after each change. */
  factsSoon(): void {
    if (this.#due) return;
    this.#due = true;
    queueMicrotask(() => {
      this.#due = false;
      for (const watch of this.#parts.watches()) this.#tellFacts(watch);
    });
  }

  #tellFacts(watch: IronWatch): void {
    const { work } = watch.state;
    const facts = this.#factsOf(watch);
    if (sameFacts(facts, work.facts)) return;
    watch.take({ kind: 'piece-facts', facts }, this.#parts.nowMs());
  }

  #capC(...[piece, heats, stages, side]: Parameters<typeof capC>): number | null {
    return this.isOverruled(piece) ? null : capC(piece, heats, stages, side);
  }

  #factsOf(watch: IronWatch): PieceFacts {
    const { state, iron } = watch;
    const { at } = state.work;
    const piece = currentPieces(this.#parts.settings()).find(({ id }) => id === at?.piece);
    if (at === null || piece === undefined || state.settings === null) return noFacts;
    const heats = this.shop.heats(piece, iron.simulated);
    const { stages } = state.settings.schedule;
    const tells = this.working(piece.id) === watch;
    return pieceFacts({ piece, heats, stages, side: at.side, overruled: this.isOverruled(piece), tells });
  }
}

/** The stage that is being worked with an iron; null where none was chosen. */
const workedStage = ({ settings, work }: WatchState): HeatStage | null =>
  settings?.schedule.stages.find(({ id }) => id === work.stageId) ?? null;
