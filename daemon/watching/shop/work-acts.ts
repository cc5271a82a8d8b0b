import type { At } from '../../../shared/heat/work/at.ts';
import type { Outcome } from '../../../shared/messages/command.ts';
import type { WorkAct, WorkCommand } from '../../../shared/messages/piece.ts';
import { otherSide, type Piece, type SideId } from '../../../shared/piece/piece.ts';
import type { AtSaid, Mark, Place } from '../../../shared/watch/input.ts';
import { workRefusals } from '../../../shared/words/work.ts';
import { Refusal } from '../../refusal.ts';
import { pieceOf } from '../../settings/pieces.ts';
import type { IronWatch } from '../iron-watch.ts';
import type { Program } from '../program.ts';
import { giveMark } from './give-mark.ts';
import { atOf } from './places.ts';

/** Carries out what the user says of where the heat goes. */
export class WorkActs {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  /** Throws `Refusal` where it can't be taken. */
  async act({ iron, act }: Omit<WorkCommand, 'commandId'>, commandId: string): Promise<Outcome> {
    const watch = this.#watchOf(iron);
    if (act.kind === 'in-hand') return this.#takeUp(watch, commandId);
    this.#program.bench.takeInHand(watch.iron.id);
    return this.#give(watch, this.#markOf(watch, act), commandId);
  }

  /**
   * A press of the button or pedal at an iron, where none of its alarms took it: the next area, or twice the last mark
   * taken back. Without a piece in hand it is a sign of somebody and nothing else.
   */
  async press({ iron }: IronWatch, button: 1 | 2, commandId: string): Promise<void> {
    try {
      await this.act({ iron: iron.id, act: { kind: button === 1 ? 'next' : 'undo' } }, commandId);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  }

  #give(watch: IronWatch, mark: Mark, commandId: string): Promise<Outcome> {
    return giveMark(watch, mark, { commandId, nowMs: this.#program.options.clock.nowMs() });
  }

  #watchOf(iron: string | undefined): IronWatch {
    const watch = iron === undefined ? this.#program.bench.inHand() : this.#program.watches.of(iron);
    if (watch === null || watch === undefined) throw new Refusal('conflict', workRefusals.whichIron, 'iron');
    return watch;
  }

  /** This iron goes on where the other one was, and every other one stands on its rest. */
  async #takeUp(watch: IronWatch, commandId: string): Promise<Outcome> {
    const { bench, watches } = this.#program;
    const before = bench.inHand();
    const others = watches.all.filter((one) => one !== watch && mayBeInUse(one));
    const at = watch === before ? watch.state.work.at : this.#takenOver(watch, before);
    bench.takeInHand(watch.iron.id);
    const mark: Mark = at === null ? place('on-work') : { kind: 'at', said: 'in-hand', at };
    const outcome = await this.#give(watch, mark, commandId);
    await Promise.all(others.map((one) => this.#give(one, place('on-rest'), `${commandId} ${one.iron.id}`)));
    return outcome;
  }

  /** On the side that is up, but on no area: it was taken up to go elsewhere, and a brush past is no lap. */
  #takenOver(watch: IronWatch, before: IronWatch | null): At | null {
    const at = before?.state.work.at ?? null;
    if (at === null) return watch.state.work.at;
    return atOf(this.#piece(at.piece), at.side, null, { iron: watch.iron, presumed: false });
  }

  #markOf(watch: IronWatch, act: Exclude<WorkAct, { kind: 'in-hand' }>): Mark {
    switch (act.kind) {
      case 'piece':
        return this.#takePiece(watch, act.piece, act.side);
      case 'area':
        return this.#onArea(watch, act.area, 'area');
      case 'next':
        return this.#onNext(watch);
      case 'turned':
        return this.#turn(watch);
      case 'stage':
        return act;
      case 'lap-done':
      case 'undo':
        return { kind: act.kind };
      case 'on-work':
      case 'off-work':
      case 'on-rest':
        return place(act.kind);
    }
  }

  #takePiece(watch: IronWatch, id: string, side: SideId | undefined): Mark {
    const piece = this.#piece(id);
    if (piece.archived) throw new Refusal('conflict', workRefusals.archived(piece.name), 'act.piece');
    if (side !== undefined && side > piece.sides.length)
      throw new Refusal('conflict', workRefusals.noSide(piece.name), 'act.side');
    this.#program.bench.shop.tookUp(piece.id);
    return this.#at(watch, piece, side ?? this.#lastSide(watch, piece), null, 'piece');
  }

  /** The side that was worked last, else the first. */
  #lastSide(watch: IronWatch, piece: Piece): SideId {
    const { at } = watch.state.work;
    if (at?.piece === piece.id) return at.side;
    const visits = this.#program.bench.shop.visits(watch.iron.simulated);
    const here = visits.flatMap(({ spot, toUtcMs }) =>
      spot?.piece === piece.id ? [{ ...spot, toUtcMs }] : [],
    );
    return here.toSorted((a, b) => b.toUtcMs - a.toUtcMs)[0]?.side ?? 1;
  }

  #onArea(watch: IronWatch, id: string, said: 'area' | 'next'): Mark {
    const piece = this.#inHand(watch);
    const area = piece.areas.find((one) => one.id === id);
    if (area === undefined) throw new Refusal('conflict', workRefusals.noArea(id, piece.name), 'act.area');
    return this.#at(watch, piece, area.side, area.id, said);
  }

  #onNext(watch: IronWatch): Mark {
    const piece = this.#inHand(watch);
    const next = this.#program.bench.next(watch, piece);
    if (next === null) throw new Refusal('conflict', workRefusals.nothingNext(piece.name), 'act');
    return this.#onArea(watch, next.area, 'next');
  }

  #turn(watch: IronWatch): Mark {
    const piece = this.#inHand(watch);
    const side = otherSide(piece, watch.state.work.at?.side ?? 1);
    if (side === null) throw new Refusal('conflict', workRefusals.noSide(piece.name), 'act');
    return this.#at(watch, piece, side, null, 'turned');
  }

  #at({ iron }: IronWatch, piece: Piece, side: SideId, areaId: string | null, said: AtSaid): Mark {
    const area = piece.areas.find(({ id }) => id === areaId) ?? null;
    return { kind: 'at', said, at: atOf(piece, side, area, { iron, presumed: said === 'next' }) };
  }

  /** The map of the piece in hand as it is now. */
  #inHand({ state }: IronWatch): Piece {
    const { at } = state.work;
    if (at === null) throw new Refusal('conflict', workRefusals.noPiece, 'act');
    return this.#piece(at.piece);
  }

  #piece(id: string): Piece {
    return pieceOf(this.#program.options.settings.current, id);
  }
}

/** What is recorded of an iron, or was said of it, has to go on; of one that was never in use nothing is said. */
const mayBeInUse = ({ session, state: { work } }: IronWatch): boolean =>
  work.place !== 'on-rest' && (session !== null || work.place !== 'unknown');

const place = (where: Place): Mark => ({ kind: 'place', place: where });
