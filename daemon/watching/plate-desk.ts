import type { Iron } from '../../shared/iron/iron.ts';
import type { SpotPlace } from '../../shared/iron/spots.ts';
import type { IronEvenness, SpotDraft } from '../../shared/messages/evenness.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { ironOf } from '../settings/dials.ts';
import { withForgottenPlate, withoutTypedSpot, withTypedSpot } from '../settings/plates.ts';
import type { Settings } from '../settings/settings.ts';
import type { PlateDesk as Asked } from '../web/desk.ts';
import { evennessAnswer, spotOf } from './evenness.ts';
import type { Program } from './program.ts';
import { settle } from './settle.ts';

/** The part of the desk where spot readings of plates come in. */
export class PlateDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  evenness(ironId: string): IronEvenness {
    const settings = this.#program.options.settings.current;
    return evennessAnswer(settings, ironOf(settings, ironId), this.#stateOf(ironId));
  }

  /** The probe's reading is taken at the call: written later, it is still the one of that moment. */
  async addSpot(ironId: string, draft: SpotDraft): Promise<IronEvenness> {
    const { options } = this.#program;
    ironOf(options.settings.current, ironId);
    const spot = spotOf(draft, this.#stateOf(ironId), this.#program.utcOf(options.clock.nowMs()));
    return this.#change(ironId, (s, iron) => withTypedSpot(s, iron, spot));
  }

  removeSpot(ironId: string, place: SpotPlace): Promise<IronEvenness> {
    return this.#change(ironId, (s, iron) => withoutTypedSpot(s, iron, place));
  }

  forget(ironId: string): Promise<IronEvenness> {
    return this.#change(ironId, withForgottenPlate);
  }

  #stateOf(ironId: string): WatchState | null {
    return this.#program.watches.of(ironId)?.state ?? null;
  }

  async #change(
    ironId: string,
    make: (settings: Settings, iron: Iron) => { readonly settings: Settings },
  ): Promise<IronEvenness> {
    await settle(this.#program, (s) => make(s, ironOf(s, ironId)));
    return this.evenness(ironId);
  }
}
