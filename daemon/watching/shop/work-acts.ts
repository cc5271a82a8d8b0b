import type { Outcome } from '../../../shared/messages/command.ts';
import type { WorkCommand } from '../../../shared/messages/piece.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import type { Mark } from '../../../shared/watch/input.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { workRefusals } from '../../../shared/words/work.ts';
import { Refusal } from '../../refusal.ts';
import { pieceOf } from '../../settings/pieces.ts';
import type { IronWatch } from '../iron-watch.ts';
import type { Program } from '../program.ts';
import { giveMark } from './give-mark.ts';
import { type Meant, markOf, placeMark, takenUpMark } from './marks.ts';

/** Carries out what the user says of where the heat goes. */
export class WorkActs {
  readonly #program: Program;
  readonly #pieceOf = (id: string): Piece => pieceOf(this.#program.options.settings.current, id);

  constructor(program: Program) {
    this.#program = program;
  }

  /** Throws `Refusal` where it can't be taken. */
  async act({ iron, act }: Omit<WorkCommand, 'commandId'>, commandId: string): Promise<Outcome> {
    const watch = this.#watchOf(iron);
    if (act.kind === 'in-hand') return this.#takeUp(watch, commandId);
    const { bench } = this.#program;
    bench.takeInHand(watch.iron.id);
    const mark = markOf(act, meant(watch), {
      pieceOf: this.#pieceOf,
      visits: () => bench.shop.visits(watch.iron.simulated),
      next: (piece) => bench.next(watch, piece),
    });
    if (act.kind === 'piece') bench.shop.tookUp(act.piece);
    return this.#give(watch, mark, commandId);
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
    const others = watches.all.filter(
      (one) => one !== watch && mayBeInUse(one.state.work, one.session !== null),
    );
    const mark = takenUpMark(meant(watch), before === null ? null : meant(before), {
      pieceOf: this.#pieceOf,
    });
    bench.takeInHand(watch.iron.id);
    const outcome = await this.#give(watch, mark, commandId);
    await Promise.all(
      others.map((one) => this.#give(one, placeMark('on-rest'), `${commandId} ${one.iron.id}`)),
    );
    return outcome;
  }
}

/** What is recorded of an iron, or was said of it, has to go on; of one that was never in use nothing is said. */
export const mayBeInUse = ({ place }: Pick<WatchState['work'], 'place'>, recorded: boolean): boolean =>
  place !== 'on-rest' && (recorded || place !== 'unknown');

const meant = ({ iron, state }: IronWatch): Meant => ({ iron, at: state.work.at });
