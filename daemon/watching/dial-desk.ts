import type { IronDial, TypedPoint } from '../../shared/messages/dial.ts';
import { ironOf, withAcceptedDial, withoutPoint, withTypedPoint } from '../settings/dials.ts';
import type { Settings } from '../settings/settings.ts';
import type { DialDesk as Asked } from '../web/desk.ts';
import { dialAnswer } from './dials.ts';
import type { Program } from './program.ts';
import { settle } from './settle.ts';

/** The part of the desk that is about what irons do at the marks of their dials. */
export class DialDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  dial(ironId: string): IronDial {
    const settings = this.#program.options.settings.current;
    const leader = this.#program.watches.of(ironId)?.state.leader ?? null;
    return dialAnswer(settings, ironOf(settings, ironId), leader);
  }

  addTypedPoint(ironId: string, typed: TypedPoint): Promise<IronDial> {
    const at = this.#program.utcOf(this.#program.options.clock.nowMs());
    return this.#change(ironId, (s) => withTypedPoint(s, ironId, typed, at));
  }

  removePoint(ironId: string, mark: number): Promise<IronDial> {
    return this.#change(ironId, (s) => withoutPoint(s, ironId, mark));
  }

  accept(ironId: string): Promise<IronDial> {
    return this.#change(ironId, (s) => withAcceptedDial(s, ironId));
  }

  async #change(
    ironId: string,
    make: (settings: Settings) => { readonly settings: Settings },
  ): Promise<IronDial> {
    await settle(this.#program, make);
    return this.dial(ironId);
  }
}
